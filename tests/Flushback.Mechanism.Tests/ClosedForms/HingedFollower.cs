using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Tests.ClosedForms;

/// <summary>A cam under a straight-faced follower on a hinge: a knife with nothing knife-like about it.</summary>
internal static class HingedFollower
{
    /// <summary>A solver for a cam about the origin under a flat follower hinged at (-hinge, 0).</summary>
    /// <param name="cam">The cam at cam angle 0.</param>
    /// <param name="hingeMm">Distance of the hinge from the pivot.</param>
    /// <param name="faceOffsetMm">Offset of the follower's face from the hinge, along its normal.</param>
    /// <param name="lengthMm">How far the face reaches beyond the hinge.</param>
    public static BenchSolver Solver(Outline cam, double hingeMm, double faceOffsetMm = 0, double lengthMm = 100)
    {
        Outline bar = Outline.FromVertices([
            new(-hingeMm + 1, faceOffsetMm),
            new(-hingeMm + lengthMm, faceOffsetMm),
            new(-hingeMm + lengthMm, faceOffsetMm + 3),
            new(-hingeMm + 1, faceOffsetMm + 3),
        ]);
        return Solver(cam, bar, new Point(-hingeMm, 0));
    }

    /// <summary>A solver for any cam and follower.</summary>
    public static BenchSolver Solver(Outline cam, Outline follower, Point hinge) =>
        new(
            new Knife
            {
                Blade = cam,
                BladeFaces = [.. cam.Edges.Select(_ => BladeFace.Unknown)],
                Spring = follower,
                SpringFaces = [.. follower.Edges.Select(_ => SpringFace.Unknown)],
                PivotRadiusMm = 0.1,
                CentrePin = new Circle(hinge, 0.1),
                DialPoint = new Point(0, follower.Bounds.MaxY),
            }
        );

    /// <summary>A full circle as an outline of two half circles.</summary>
    public static Outline Disc(Point centre, double radiusMm) =>
        Outline.FromVertices([
            new Vertex(centre.X - radiusMm, centre.Y, 1),
            new Vertex(centre.X + radiusMm, centre.Y, 1),
        ]);

    /// <summary>A square about the origin, its corners rounded.</summary>
    public static Outline Square(double halfSideMm, double cornerRadiusMm = 0)
    {
        double a = halfSideMm;
        double r = cornerRadiusMm;
        double quarter = Math.Tan(Math.PI / 8);
        return r == 0
            ? Outline.FromVertices([new(-a, -a), new(a, -a), new(a, a), new(-a, a)])
            : Outline.FromVertices([
                new(-a + r, -a),
                new(a - r, -a, quarter),
                new(a, -a + r),
                new(a, a - r, quarter),
                new(a - r, a),
                new(-a + r, a, quarter),
                new(-a, a - r),
                new(-a, -a + r, quarter),
            ]);
    }

    /// <summary>Follower angle in degrees at a cam angle, counter-clockwise as in cam handbooks.</summary>
    public static double FollowerDegrees(this BenchSolver solver, double camDegrees) =>
        solver.PoseAt(Angle.FromDegrees(-camDegrees)).Lowest.Degrees;
}
