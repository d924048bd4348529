using CsCheck;
using Flushback.Geometry;
using Flushback.Geometry.Checking;
using Flushback.Geometry.Distances;

namespace Flushback.Inspection.Tests.Referee;

/// <summary>Random parts of the size of a knife: a bent star with necks and bays, and round and square holes in it.</summary>
internal static class AnyPart
{
    /// <summary>Flatter arcs, of radii beyond a kilometre, are for the tests of offsets.</summary>
    private const double FlattestTested = 1e-6;

    public static Gen<(Outline Outer, Outline[] Holes)> WithHoles { get; } =
        Gen.Select(
            Gen.Select(Gen.Double[0.3, 1], Gen.Double[4, 30], Gen.Double[-0.8, 0.8], Gen.Bool).Array[4, 12],
            Gen.Select(Gen.Double[-20, 20], Gen.Double[-20, 20], Gen.Double[0.5, 3], Gen.Bool).Array[0, 6],
            Made
        );

    public static Gen<RigidMotion> Motion { get; } =
        Gen.Select(
            Gen.Double[-10, 10],
            Gen.Double[-200, 200],
            Gen.Double[-200, 200],
            Gen.Bool,
            (turn, x, y, isMirrored) => new RigidMotion(new Angle(turn), new Vector(x, y), isMirrored)
        );

    /// <summary>The part as entities of a drawing.</summary>
    public static string Entities(Outline outer, IEnumerable<Outline> holes) =>
        Sheet.Closed("A0", outer) + string.Concat(holes.Select((hole, i) => Sheet.Closed($"B{i}", hole)));

    private static (Outline, Outline[]) Made(
        (double Step, double Radius, double Bulge, bool IsArc)[] corners,
        (double X, double Y, double Radius, bool IsRound)[] holes
    )
    {
        Outline outer = Star(corners);
        List<Outline> kept = [];
        foreach ((double x, double y, double radius, bool isRound) in holes)
        {
            Point centre = new(x, y);
            Outline hole = isRound ? Round(centre, radius) : Square(centre, radius);
            bool isClear =
                outer.Contains(centre)
                && Distance.Between(hole, outer).DistanceMm > 0.05
                && outer.SignedDistanceMm(centre) > radius
                && kept.TrueForAll(other =>
                    Distance.Between(hole, other).DistanceMm > 0.05
                    && !other.Contains(centre)
                    && !hole.Contains(other.Bounds.Centre)
                );
            if (isClear)
            {
                kept.Add(hole);
            }
        }

        return (outer, [.. kept]);
    }

    private static Outline Round(Point centre, double radius) =>
        Outline.FromVertices([
            new Vertex(centre + new Vector(radius, 0), 1),
            new Vertex(centre - new Vector(radius, 0), 1),
        ]);

    private static Outline Square(Point centre, double half) =>
        Outline.FromVertices([
            new Vertex(centre + new Vector(half, half)),
            new Vertex(centre + new Vector(-half, half)),
            new Vertex(centre + new Vector(-half, -half)),
            new Vertex(centre + new Vector(half, -half)),
        ]);

    private static Outline Star((double Step, double Radius, double Bulge, bool IsArc)[] corners)
    {
        double turn = corners.Sum(corner => corner.Step);
        for (double bend = 1; ; bend /= 2)
        {
            double direction = 0;
            List<Vertex> vertices = [];
            foreach ((double step, double radius, double bulge, bool isArc) in corners)
            {
                direction += Math.Min(step / turn * Math.Tau, 2.5);
                Vector arm = Vector.FromDirection(new Angle(direction)) * radius;
                bool isBent = isArc && Math.Abs(bulge * bend) > FlattestTested;
                vertices.Add(new Vertex(Point.Origin + arm, isBent ? bulge * bend : 0));
            }

            if (OutlineCheck.TryOutline([.. vertices], GeometryTolerances.Default, out Outline? outline, out _))
            {
                return outline.CounterClockwise();
            }

            if (bend < 1e-4)
            {
                throw new InvalidOperationException("A star of straight edges is sound.");
            }
        }
    }
}
