using System.Collections.Immutable;
using Flushback.Dxf.Drawings;
using Flushback.Geometry;

namespace Flushback.Dxf.Chaining;

/// <summary>An open entity: the piece that chains are made of, with a first and a last end.</summary>
internal sealed class ChainUnit(DxfShape shape, ImmutableArray<Edge> edges)
{
    /// <summary>The entity.</summary>
    public DxfShape Shape { get; } = shape;

    /// <summary>Its edges, as drawn.</summary>
    public ImmutableArray<Edge> Edges { get; } = edges;

    /// <summary>Length of the whole, in millimetres.</summary>
    public double LengthMm => Edges.Sum(edge => edge.LengthMm);

    /// <summary>The entity's handle, or its line where the file gives no handles.</summary>
    public string Name { get; } = NameOf(shape);

    /// <summary>Where one of its two ends lies.</summary>
    public Point End(bool isLast) => isLast ? Edges[^1].End : Edges[0].Start;

    /// <summary>True when an end belongs to a line, whose coordinates were written down rather than computed.</summary>
    public bool IsLineAt(bool isLast) => !(isLast ? Edges[^1] : Edges[0]).IsArc;

    /// <summary>How a contour names an entity.</summary>
    public static string NameOf(DxfShape shape) => shape.Handle.Length > 0 ? shape.Handle : shape.Place;
}

/// <summary>One end of a unit.</summary>
/// <param name="Unit">Index of the unit.</param>
/// <param name="IsLast">True for the end of its last edge, false for the start of its first.</param>
internal readonly record struct UnitEnd(int Unit, bool IsLast)
{
    /// <summary>A running number: two ends a unit.</summary>
    public int Index => (2 * Unit) + (IsLast ? 1 : 0);

    /// <summary>The other end of the same unit.</summary>
    public UnitEnd Opposite => this with { IsLast = !IsLast };

    /// <summary>The end of a running number.</summary>
    public static UnitEnd At(int index) => new(index / 2, (index & 1) == 1);
}
