using System.Globalization;

namespace Flushback.Dxf.Drawings;

/// <summary>One entity of a drawing as lines, arcs and circles.</summary>
/// <param name="Handle">
/// The entity's handle; empty when the file gives none. For an entity of a block, the handles of the INSERTs that place
/// it in front, such as <c>4A/2F</c>.
/// </param>
/// <param name="Layer">The layer it lies on.</param>
/// <param name="TypeName">The entity type as the file names it, such as <c>LWPOLYLINE</c>.</param>
/// <param name="Line">Line of the file where the entity begins, from 1; for a binary file the byte offset.</param>
/// <param name="Geometry">What it is, in millimetres in the drawing's own frame.</param>
public sealed record DxfShape(string Handle, string Layer, string TypeName, int Line, ShapeGeometry Geometry)
{
    /// <summary>How an issue names the entity: type, handle when it has one, and line.</summary>
    public string Label => Handle.Length > 0 ? $"{TypeName} {Handle} ({Place})" : $"{TypeName} at {Place}";

    /// <summary>Where the entity begins, in words: <c>line 120</c>, or <c>byte 2310</c> of a binary file.</summary>
    public string Place => string.Create(CultureInfo.InvariantCulture, $"{PlaceWord} {Line}");

    /// <summary>True when the entity stands in a block, which may be placed elsewhere too.</summary>
    public bool IsInBlock { get; init; }

    /// <summary>What <see cref="Line"/> counts: lines, or bytes of a binary file.</summary>
    internal string PlaceWord { get; init; } = "line";
}
