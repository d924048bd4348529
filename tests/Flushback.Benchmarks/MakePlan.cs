using BenchmarkDotNet.Attributes;
using Flushback.Catalogue.Designs;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Plans;

namespace Flushback.Benchmarks;

/// <summary>A whole plan: the search for the least removal and the simulation of its passes, the stops read alone.</summary>
[MemoryDiagnoser]
public class MakePlan
{
    private static readonly PlanSettings _settings = new();

    private Placement _placement = null!;

    /// <summary>Seeds of random knives: 1 and 41 cut both faces, 5 one, 7 the open flat too.</summary>
    [Params(1, 5, 7, 41)]
    public int Seed { get; set; }

    /// <summary>Sets the knife up.</summary>
    [GlobalSetup]
    public void Setup() =>
        _placement = new Placement(
            KnifeGenerator.FromSeed(Seed).ToKnife(),
            default,
            default,
            DrawnBladeAngleFound: false
        );

    /// <summary>The plan.</summary>
    [Benchmark]
    public PlanReport Plan() => Planning.Run(_placement, _settings);
}
