using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using Flushback.Catalogue.Designs;
using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Benchmarks;

/// <summary>
/// The same knife read at the same 361 blade angles, from the open stop to closed: by the exact solver, by the whole
/// check, and by the polygons and bisection of the referee. The column "Faster" holds the referee against each.
/// </summary>
[SimpleJob(RunStrategy.Throughput, warmupCount: 2, iterationCount: 6)]
[MemoryDiagnoser]
[BenchTable]
public class Sweep361
{
    private const int Angles = 361;
    private static readonly Angle _closed = Angle.FromDegrees(180);

    private BruteForceBench _referee = null!;
    private BenchSolver _solver = null!;
    private Placement _placement = null!;

    /// <summary>The knife: its name in the catalogue.</summary>
    [Params("Wagtail", "Sandpiper", "Dunlin")]
    public string Knife { get; set; } = "";

    /// <summary>Sets the knife on both benches.</summary>
    [GlobalSetup]
    public void SetUp()
    {
        Knife knife = KnifeCatalogue.All.Single(design => design.Name == Knife).ToKnife();
        _referee = BruteForceBench.For(knife);
        _solver = new BenchSolver(knife);
        _placement = new Placement(knife, RigidMotion.Identity, Angle.Zero, DrawnBladeAngleFound: false);
    }

    /// <summary>Polygons, overlap, bisection.</summary>
    [Benchmark(Baseline = true)]
    public double BruteForce() => _referee.Sweep(Angle.Zero, _closed, Angles)[^1].SpringRotation.Radians;

    /// <summary>The exact solver, each angle following the one before.</summary>
    [Benchmark]
    public double Exact()
    {
        Angle rotation = _solver.PoseAt(RotationTrack.MidSwing).Lowest;
        for (int i = Angles - 1; i >= 0; i--)
        {
            rotation = _solver.PoseAt(_closed * (i / (Angles - 1.0)), rotation).Lowest;
        }

        return rotation.Radians;
    }

    /// <summary>Stops, contacts, lift curve at half degrees, clearances and findings.</summary>
    [Benchmark]
    public bool WholeCheck() => BenchCheck.Run(_placement, new BenchSettings()).IsClean;
}
