using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Handle.Beams;
using Flushback.Mechanism.Handle.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Handle.Tests.Solving;

/// <summary>A knife put together for a test: beam, elastic nose, solver and track.</summary>
internal sealed class HandleCase
{
    public HandleCase(
        Knife knife,
        double preloadMm = 0.5,
        double widthMm = 2.4,
        double modulusMpa = 205_000,
        Func<NoseStiffness, NoseStiffness>? change = null
    )
    {
        Knife = knife;
        Bench = new BenchSolver(knife);
        BenchTrack = RotationTrack.Follow(Bench);
        BenchStops = new StopFinder(Bench, BenchTrack);
        Beam = new SpringBeam(knife.Spring, knife.CentrePin, knife.RearPin!.Value, -6);
        Angle open = BenchStops.Open().Pose.Lowest;
        NoseStiffness stiffness = Beam.Whole.ToStiffness(modulusMpa, widthMm);
        Nose = new ElasticNose(
            change?.Invoke(stiffness) ?? stiffness,
            Beam.OverhangMm,
            open + new Angle(Math.Asin(preloadMm / knife.CentrePin.Centre.X))
        );
        Solver = new NoseSolver(Bench, Nose);
        Track = NoseTrack.Follow(Solver, BenchTrack.At(RotationTrack.MidSwing).Lowest);
    }

    public HandleCase(KnifeDesign design, double preloadMm = 0.5)
        : this(design.ToKnife(), preloadMm) { }

    public Knife Knife { get; }

    public BenchSolver Bench { get; }

    public RotationTrack BenchTrack { get; }

    public StopFinder BenchStops { get; }

    public SpringBeam Beam { get; }

    public ElasticNose Nose { get; }

    public NoseSolver Solver { get; }

    public NoseTrack Track { get; }
}
