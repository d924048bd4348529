namespace Flushback.Geometry.Checking;

/// <summary>One thing that is wrong with the vertices of an outline. A fact, without words for it.</summary>
/// <param name="Kind">What is wrong.</param>
/// <param name="VertexIndex">The vertex at fault, or the one at which the edge at fault begins; counted from 0.</param>
/// <param name="At">Where, in the frame of the vertices; not finite when the vertex is not.</param>
/// <param name="OtherVertexIndex">The vertex at which the other edge begins, where two edges are at fault.</param>
public readonly record struct OutlineFlaw(
    OutlineFlawKind Kind,
    int VertexIndex,
    Point At,
    int? OtherVertexIndex = null
);

/// <summary>What can be wrong with the vertices of an outline.</summary>
public enum OutlineFlawKind
{
    /// <summary>Fewer than three vertices, or two without an arc between them: nothing is enclosed.</summary>
    TooFewVertices,

    /// <summary>A coordinate or a bulge that is not a finite number.</summary>
    NotFinite,

    /// <summary>A coordinate beyond the limit to either side, or an arc too high over its chord to lie within it.</summary>
    CoordinateOutOfRange,

    /// <summary>A line whose two ends are the same point.</summary>
    ZeroLengthEdge,

    /// <summary>An arc whose two ends are the same point: its centre and radius cannot be known.</summary>
    BulgeBetweenEqualPoints,

    /// <summary>The outline encloses no area.</summary>
    ZeroArea,

    /// <summary>Two edges pass through one another.</summary>
    SelfCrossing,

    /// <summary>
    /// Two edges touch that are not neighbours, or neighbours touch away from their common vertex. Edges that pass through
    /// one another at a vertex are among these.
    /// </summary>
    SelfTouching,

    /// <summary>Two edges run along one another.</summary>
    SelfOverlapping,
}
