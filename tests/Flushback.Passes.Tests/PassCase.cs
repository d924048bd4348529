using System.Collections.Immutable;
using Flushback.Catalogue.Designs;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Passes.Tests;

/// <summary>A knife on the bench, ready for a pass.</summary>
internal sealed class PassCase
{
    public static readonly Site OpenFlat = Site.On(BladeFace.OpenFlat);
    public static readonly Site Shoulder = Site.On(BladeFace.Shoulder);
    public static readonly Site HalfStopFace = Site.On(BladeFace.HalfStopFace);
    public static readonly Site ClosedFace = Site.On(BladeFace.ClosedFace);
    public static readonly Site OpenCorner = Site.On(BladeFace.OpenCorner);
    public static readonly Site ClosedCorner = Site.On(BladeFace.ClosedCorner);
    public static readonly Site Kick = Site.On(BladeFace.Kick);
    public static readonly Site Underside = Site.On(SpringFace.Underside);
    public static readonly Site EndFace = Site.On(SpringFace.EndFace);
    public static readonly Site NoseCorner = Site.On(SpringFace.NoseCorner);

    private static readonly SimulationSettings _quick = new() { JudgesFindings = false };

    public PassCase(KnifeDesign design)
        : this(design.ToKnife()) { }

    public PassCase(Knife knife)
    {
        Knife = knife;
        Readings = StopCheck.Run(knife, new BenchSettings()).Readings;
    }

    /// <summary>A knife as it comes out of a drawing: its faces found from its shape.</summary>
    public static PassCase Placed(KnifeDesign design)
    {
        (Placement? placement, var problems) = KnifePlacement.Place(design.ToDrawn());
        Assert.Empty(problems);
        return new PassCase(placement!.Knife);
    }

    public Knife Knife { get; }

    public StopReadings Readings { get; }

    public double LiftMm(Stop stop) => Readings.At(stop)!.LiftMm;

    /// <summary>A flat slice.</summary>
    public static FlatSlice Slice(Site face, double frontMm, double rearMm) =>
        new(face) { FrontDepthMm = frontMm, RearDepthMm = rearMm };

    /// <summary>The pass made, or the reason it was refused for.</summary>
    public (PassResult? Result, PassProblem? Problem) Try(Pass pass) =>
        PassCut.Make(Knife, Readings, pass, PassSettings.Default);

    /// <summary>The knife after a pass that has to be possible.</summary>
    public PassCase After(Pass pass)
    {
        (PassResult? result, PassProblem? problem) = Try(pass);
        Assert.True(result is not null, problem?.Sentence);
        return new PassCase(result!.Knife);
    }

    /// <summary>Passes one after another, reading the stops only.</summary>
    public Simulation Simulate(params Pass[] passes)
    {
        (Simulation? simulation, RefusedPass? refused) = Simulation.Run(PlacementOf(Knife), passes, _quick);
        Assert.True(simulation is not null, refused?.Problem.Sentence);
        return simulation!;
    }

    /// <summary>A knife placed where it is.</summary>
    public static Placement PlacementOf(Knife knife) => new(knife, default, default, DrawnBladeAngleFound: false);

    /// <summary>Sites of the passes, for data.</summary>
    public static ImmutableArray<Site> TangFaces { get; } = [OpenFlat, HalfStopFace, ClosedFace];
}
