using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Benchmarks;

/// <summary>What a sweep and a whole check cost as the same blade is drawn in ever more, ever smaller edges.</summary>
[SimpleJob(RunStrategy.Throughput, warmupCount: 1, iterationCount: 4)]
public class FeatureCount
{
    private const int Angles = 361;

    private BenchSolver _solver = null!;
    private Placement _placement = null!;

    /// <summary>Edges of the blade.</summary>
    [Params(20, 200, 2_000, 20_000)]
    public int Edges { get; set; }

    /// <summary>Draws the blade in that many edges.</summary>
    [GlobalSetup]
    public void SetUp()
    {
        Knife knife = Subdivision.Of(KnifeCatalogue.Sandpiper.ToKnife(), Edges);
        _solver = new BenchSolver(knife);
        _placement = new Placement(knife, RigidMotion.Identity, Angle.Zero, DrawnBladeAngleFound: false);
    }

    /// <summary>361 blade angles.</summary>
    [Benchmark]
    public double Sweep()
    {
        Angle rotation = _solver.PoseAt(RotationTrack.MidSwing).Lowest;
        for (int i = Angles - 1; i >= 0; i--)
        {
            rotation = _solver.PoseAt(Angle.FromDegrees(i * 0.5), rotation).Lowest;
        }

        return rotation.Radians;
    }

    /// <summary>The whole check.</summary>
    [Benchmark]
    public bool WholeCheck() => BenchCheck.Run(_placement, new BenchSettings()).IsClean;
}
