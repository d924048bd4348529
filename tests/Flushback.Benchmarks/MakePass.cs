using BenchmarkDotNet.Attributes;
using Flushback.Catalogue.Designs;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Benchmarks;

/// <summary>One pass on a knife: the cut alone, with the stops read after it, and with the whole check and its findings.</summary>
[MemoryDiagnoser]
public class MakePass
{
    private static readonly BenchSettings _settings = new();
    private static readonly Site _halfStopFace = Site.On(BladeFace.HalfStopFace);
    private static readonly Pass _slice = new FlatSlice(_halfStopFace) { FrontDepthMm = 0.03, RearDepthMm = 0.02 };
    private static readonly Pass _round = new RoundCorner(Site.On(BladeFace.OpenCorner), 0.5);

    private Knife _knife = null!;
    private StopReadings _readings = null!;

    /// <summary>The knives.</summary>
    [Params("Wagtail", "Sandpiper")]
    public string Knife { get; set; } = "";

    /// <summary>What is done.</summary>
    [Params("slice", "round")]
    public string Pass { get; set; } = "";

    private Pass Chosen => Pass == "slice" ? _slice : _round;

    /// <summary>Sets the knife up.</summary>
    [GlobalSetup]
    public void Setup()
    {
        _knife = KnifeCatalogue.All.Single(design => design.Name == Knife).ToKnife();
        _readings = StopCheck.Run(_knife, _settings).Readings;
    }

    /// <summary>The outlines after the pass.</summary>
    [Benchmark]
    public PassResult? Cut() => PassCut.Make(_knife, _readings, Chosen, PassSettings.Default).Result;

    /// <summary>The outlines, and the dial at the stops.</summary>
    [Benchmark]
    public StopReadings CutAndReadStops() => StopCheck.Run(Cut()!.Knife, _settings).Readings;

    /// <summary>The outlines, and the whole report.</summary>
    [Benchmark]
    public BenchReport CutAndCheck() =>
        BenchCheck.Run(new Placement(Cut()!.Knife, default, default, DrawnBladeAngleFound: false), _settings);
}
