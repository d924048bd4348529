using CsCheck;
using Flushback.Geometry.Checking;

namespace Flushback.Geometry.Tests.Shapes;

/// <summary>Random shapes of the size of a folding knife, for properties that hold for all of them.</summary>
internal static class Any
{
    /// <summary>Flatter arcs, of radii beyond a kilometre, lose digits to their centre; they have tests of their own.</summary>
    private const double FlattestTested = 1e-6;

    public static Gen<Point> Point { get; } =
        Gen.Select(Gen.Double[-50, 50], Gen.Double[-50, 50], (x, y) => new Point(x, y));

    public static Gen<RigidMotion> Motion { get; } =
        Gen.Select(
            Gen.Double[-10, 10],
            Gen.Double[-200, 200],
            Gen.Double[-200, 200],
            Gen.Bool,
            (turn, x, y, mirrored) => new RigidMotion(new Angle(turn), new Vector(x, y), mirrored)
        );

    /// <summary>Bulges of either sign: a third of them zero, some nearly flat, some half circles, some beyond.</summary>
    public static Gen<double> Bulge { get; } =
        Gen.Frequency(
            (3, Gen.Const(0.0)),
            (4, Gen.Double[-1, 1].Where(bulge => Math.Abs(bulge) > FlattestTested)),
            (1, Gen.Double[FlattestTested, 1e-4]),
            (1, Gen.OneOf(Gen.Const(-1.0), Gen.Const(1.0))),
            (1, Gen.Double[1, 6]),
            (1, Gen.Double[-6, -1])
        );

    public static Gen<Edge> Edge { get; } =
        Gen.Select(Point, Point, Bulge, (start, end, bulge) => new Edge(start, end, bulge))
            .Where(edge => edge.Chord.Length > 0.1);

    public static Gen<Edge> Arc { get; } = Edge.Where(edge => edge.IsArc);

    /// <summary>A sound outline of 3 to 14 edges about the origin, travelled either way.</summary>
    public static Gen<Outline> Outline { get; } =
        Gen.Select(
                Gen.Select(Gen.Double[0.2, 1], Gen.Double[8, 30], Gen.Double[-0.9, 0.9], Gen.Bool).Array[3, 14],
                Gen.Bool,
                Star
            )
            .Where(outline => outline is not null)
            .Select(outline => outline!);

    /// <summary>
    /// A star-shaped polygon, its edges bent as far as the outline stays sound; none when its corners lie in one line.
    /// </summary>
    private static Outline? Star((double Step, double Radius, double Bulge, bool IsArc)[] corners, bool reversed)
    {
        double turn = corners.Sum(corner => corner.Step);
        for (double bend = 1; ; bend /= 2)
        {
            double direction = 0;
            List<Vertex> vertices = [];
            foreach ((double step, double radius, double bulge, bool isArc) in corners)
            {
                // No step reaches a half turn, so the polygon goes once about the origin.
                direction += Math.Min(step / turn * Math.Tau, 2.5);
                Vector arm = Vector.FromDirection(new Angle(direction)) * radius;
                bool isBent = isArc && Math.Abs(bulge * bend) > FlattestTested;
                vertices.Add(new Vertex(Geometry.Point.Origin + arm, isBent ? bulge * bend : 0));
            }

            if (
                OutlineCheck.TryOutline([.. vertices], GeometryTolerances.Default, out Outline? outline, out _)
                || bend < 1e-3
            )
            {
                return reversed ? outline?.Reversed() : outline;
            }
        }
    }
}
