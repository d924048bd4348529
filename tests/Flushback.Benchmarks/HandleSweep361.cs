using BenchmarkDotNet.Attributes;
using BenchmarkDotNet.Engines;
using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Handle.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Benchmarks;

/// <summary>
/// A knife in its handle at 361 blade angles, from the open rest to the closed one: by the solver alone, with everything
/// that leads up to it, and the whole check with its sensitivities.
/// </summary>
[SimpleJob(RunStrategy.Throughput, warmupCount: 3, iterationCount: 6)]
[MemoryDiagnoser]
public class HandleSweep361
{
    private const int Angles = 361;
    private static readonly HandleSettings _settings = new();
    private static readonly Angle _step = Angle.FromDegrees(0.5);

    private BenchReport _bench = null!;
    private BenchGround _ground = null!;
    private NoseSolver _solver = null!;
    private NoseState _closed;
    private Angle _open;

    /// <summary>The knife: its place in the catalogue.</summary>
    [ParamsSource(nameof(Knives))]
    public string Knife { get; set; } = "";

    /// <summary>All knives of the catalogue.</summary>
    public static IEnumerable<string> Knives => KnifeCatalogue.All.Select(design => design.Name);

    /// <summary>Reads the knife on the bench and finds its rests in the handle.</summary>
    [GlobalSetup]
    public void SetUp()
    {
        Knife knife = KnifeCatalogue.All.Single(design => design.Name == Knife).ToKnife();
        _bench = BenchCheck.Run(
            new Placement(knife, RigidMotion.Identity, Angle.Zero, DrawnBladeAngleFound: false),
            new BenchSettings()
        );
        _ground = new BenchGround(knife, default);
        HandleModel model = new(_ground, _settings);
        _solver = model.Solver;
        _open = model.Rests.Open().State.BladeAngle;
        _closed = model.Rests.Near(Angle.FromDegrees(180)).State;
    }

    /// <summary>The solver, each angle following the one before.</summary>
    [Benchmark]
    public double Solver()
    {
        NoseState state = _closed;
        Angle step = (_closed.BladeAngle - _open) * (1.0 / (Angles - 1));
        for (int i = 1; i < Angles; i++)
        {
            state = _solver.At(_closed.BladeAngle - (step * i), state.Pose);
        }

        return state.EnergyNmm;
    }

    /// <summary>The beam, the spring followed through the rotation, both rests, forces, stresses and pull at half degrees.</summary>
    [Benchmark]
    public double FromTheOutline() => new HandleSweep(new HandleModel(_ground, _settings), _step).Pull.PullN;

    /// <summary>All of the report: that, the half stop, and ten more knives for the sensitivities.</summary>
    [Benchmark]
    public bool WholeCheck() => HandleCheck.Run(_bench, _settings).Report is not null;
}
