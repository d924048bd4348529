namespace Flushback.Geometry;

/// <summary>A corner of an outline and the bend of the edge that leaves it.</summary>
/// <param name="Position">Where the edge starts.</param>
/// <param name="Bulge">
/// Tangent of a quarter of the included angle of the arc to the next vertex, as in DXF: zero for a line, positive when
/// the arc runs counter-clockwise, 1 for a half circle.
/// </param>
public readonly record struct Vertex(Point Position, double Bulge = 0)
{
    /// <summary>A vertex from bare coordinates in millimetres.</summary>
    public Vertex(double x, double y, double bulge = 0)
        : this(new Point(x, y), bulge) { }
}
