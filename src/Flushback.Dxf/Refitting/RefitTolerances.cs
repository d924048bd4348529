using Flushback.Geometry;

namespace Flushback.Dxf.Refitting;

/// <summary>What is taken for an arc that was cut into short edges.</summary>
public sealed record RefitTolerances
{
    /// <summary>The defaults.</summary>
    public static RefitTolerances Default { get; } = new();

    /// <summary>
    /// The whole of an arc has to rise this many times <see cref="VertexMm"/> above its chord: less could be a straight
    /// line with rounded vertices.
    /// </summary>
    internal const double LeastRise = 4;

    /// <summary>Farthest that a straight edge may lie from the arc it becomes part of, in millimetres.</summary>
    /// <value>0.01 mm.</value>
    public double ChordMm { get; init; } = 0.01;

    /// <summary>Farthest that a vertex, or the middle of a short arc, may lie from the new arc, in millimetres.</summary>
    /// <value>
    /// 0.002 mm. Coordinates written to a micrometre put a vertex up to 0.00071 mm off its true place (half a micrometre
    /// along both axes). A new arc begins and ends at two such vertices, so it can lie as far off again: 0.00141 mm; and
    /// it is found by least squares, which is not the least of the largest distance.
    /// </value>
    public double VertexMm { get; init; } = 0.002;

    /// <summary>Widest angle that one straight edge may take up on the arc.</summary>
    /// <value>
    /// 23 degrees: a polygon of fifteen sides (24 degrees) or fewer is taken to be meant, one of sixteen (22.5 degrees)
    /// or more to be round. Common practice, no source.
    /// </value>
    public Angle WidestEdge { get; init; } = Angle.FromDegrees(23);

    /// <summary>Fewest edges that make an arc.</summary>
    /// <value>Four: five vertices, two more than lie on some circle whatever they are.</value>
    public int FewestEdges { get; init; } = 4;
}
