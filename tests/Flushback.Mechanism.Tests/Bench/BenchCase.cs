using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Tests.Bench;

/// <summary>A knife set up for a test: solver, track and report.</summary>
internal sealed class BenchCase
{
    public BenchCase(Knife knife)
    {
        Knife = knife;
        Solver = new BenchSolver(knife);
        Track = RotationTrack.Follow(Solver);
        Stops = new StopFinder(Solver, Track);
        Faces = new FaceNaming(knife);
    }

    public BenchCase(KnifeDesign design)
        : this(design.ToKnife()) { }

    public Knife Knife { get; }

    public BenchSolver Solver { get; }

    public RotationTrack Track { get; }

    public StopFinder Stops { get; }

    public FaceNaming Faces { get; }

    public SpringPose HalfStop => Stops.Near(Angle.FromDegrees(90), StopFinder.LeastHalfStopDepthMm).Pose;

    public SpringPose Closed => Stops.Near(Angle.FromDegrees(180), 0).Pose;

    /// <summary>Travel of the dial from where the spring is drawn, in millimetres.</summary>
    public double RawLiftMm(SpringPose pose) => Knife.LiftMm(Angle.Zero, pose.Lowest);

    public BladeFace CarryingFace(SpringPose pose) =>
        Faces.BladeFaceOf(pose.Support.BladeEdge, pose.Support.BladeVertex);

    /// <summary>The knife with one vertex of its blade moved.</summary>
    public static Knife MoveVertex(Knife knife, int vertex, Vector by)
    {
        Vertex[] vertices = [.. knife.Blade.Vertices];
        vertices[vertex] = vertices[vertex] with { Position = vertices[vertex].Position + by };
        return knife with { Blade = Outline.FromVertices(vertices) };
    }

    /// <summary>Index of the sharp corner between two faces of a blade.</summary>
    public static int CornerBetween(Knife knife, BladeFace before, BladeFace after) =>
        Enumerable
            .Range(0, knife.BladeFaces.Length)
            .Single(i =>
                knife.BladeFaces[i] == after
                && knife.BladeFaces[(i + knife.BladeFaces.Length - 1) % knife.BladeFaces.Length] == before
            );

    /// <summary>The whole check of a drawn knife.</summary>
    public static BenchReport Check(DrawnKnife drawn, BenchSettings? settings = null)
    {
        (Placement? placement, var problems) = KnifePlacement.Place(drawn);
        Assert.Empty(problems);
        return BenchCheck.Run(placement!, settings ?? new BenchSettings());
    }
}
