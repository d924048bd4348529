using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Dxf.Drawings;

/// <summary>What a DXF file shows in model space, flattened to lines, arcs and circles in millimetres. Immutable.</summary>
public sealed record DxfDrawing
{
    /// <summary>The unit the file's coordinates were taken to be in.</summary>
    public required DrawingUnit Unit { get; init; }

    /// <summary>Millimetres in one unit of the file; everything in this drawing is already in millimetres.</summary>
    public double MillimetresPerUnit => Unit.Millimetres();

    /// <summary>The file's version mark, such as <c>AC1015</c>; empty when the file has none.</summary>
    public string VersionMark { get; init; } = "";

    /// <summary>The layers, hidden ones too, in the order of the file.</summary>
    public ImmutableArray<DxfLayer> Layers { get; init; } = [];

    /// <summary>The entities that are seen and have geometry, in the order of the file.</summary>
    public ImmutableArray<DxfShape> Shapes { get; init; } = [];

    /// <summary>
    /// Entities whose geometry could not be read, each as an error. They stand in the way only when their layer is
    /// used, so a spoiled note on a layer of its own does not spoil the blade.
    /// </summary>
    public ImmutableArray<DxfIssue> LayerFaults { get; init; } = [];

    /// <summary>Smallest box around all shapes, in millimetres; <see cref="Box.Empty"/> for an empty drawing.</summary>
    public Box Bounds => ShapeBounds.Of(Shapes);

    /// <summary>The layer of a name, compared without regard to case; null when there is none.</summary>
    public DxfLayer? FindLayer(string name) =>
        Layers.FirstOrDefault(layer => string.Equals(layer.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The shapes on a layer, compared without regard to case.</summary>
    public IEnumerable<DxfShape> ShapesOn(string layer) =>
        Shapes.Where(shape => string.Equals(shape.Layer, layer, StringComparison.OrdinalIgnoreCase));
}
