using BenchmarkDotNet.Attributes;
using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Tolerances;

namespace Flushback.Benchmarks;

/// <summary>Random parts of a tolerance study: drawn and brought to their stops one by one, and a whole study on all cores.</summary>
[MemoryDiagnoser]
public class StudyParts
{
    private const int OneByOne = 64;
    private const int Whole = 10_000;

    private Placement _placement = null!;
    private ToleranceStudy _study = null!;

    /// <summary>The knives.</summary>
    [Params("Wagtail", "Dunlin", "Sandpiper")]
    public string Knife { get; set; } = "";

    private static ToleranceSettings Settings(int parts) =>
        new()
        {
            PinsMm = 0.02,
            ClearanceMm = 0.01,
            ProfileMm = 0.03,
            Parts = parts,
        };

    /// <summary>Sets the knife up.</summary>
    [GlobalSetup]
    public void Setup()
    {
        KnifeDesign design = KnifeCatalogue.All.Single(design => design.Name == Knife);
        _placement = new Placement(design.ToKnife(), RigidMotion.Identity, Angle.Zero, DrawnBladeAngleFound: false);
        _study = ToleranceStudy.Begin(_placement, Settings(OneByOne)).Study!;
    }

    /// <summary>A part on one core.</summary>
    [Benchmark(OperationsPerInvoke = OneByOne)]
    public void Part() => _study.Read(0, OneByOne);

    /// <summary>All derivatives of a knife, with what it reads as drawn.</summary>
    [Benchmark]
    public ToleranceStudy? Derivatives() => ToleranceStudy.Begin(_placement, Settings(1)).Study;

    /// <summary>A study of ten thousand parts on all cores.</summary>
    [Benchmark]
    public ToleranceReport? WholeStudy() => ToleranceStudy.Run(_placement, Settings(Whole)).Report;
}
