using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>The passes of given amounts in the order of the bench, made on the knife and read at the end.</summary>
/// <remarks>
/// <para>
/// Open flat first, then the closed face by its ends and level, then the half-stop face. A corner is rounded as soon as
/// no later slice touches it, since a slice after the round would leave a sharp corner again: so open the dial stands
/// where it will stay as early as may be, and what is cut later is read against that zero.
/// </para>
/// <para>
/// Where a slice does come later, the depths before it anticipate what the rounds do to the zero. A relief comes when both
/// ends of its face are as they stay, so that its margins are as wide as asked for.
/// </para>
/// </remarks>
internal sealed class PlanTrial
{
    // Depths below this are nothing: a tenth of a micrometre.
    public const double NothingMm = 1e-4;

    private static readonly Site _openFlat = Site.On(BladeFace.OpenFlat);
    private static readonly Site _halfStopFace = Site.On(BladeFace.HalfStopFace);
    private static readonly Site _closedFace = Site.On(BladeFace.ClosedFace);
    private static readonly Site _kick = Site.On(BladeFace.Kick);

    private readonly PlanSettings _settings;
    private readonly CancellationToken _cancellation;
    private readonly List<Pass> _passes = [];
    private bool _isStale;

    private PlanTrial(Knife knife, StopReadings readings, PlanSettings settings, CancellationToken cancellation) =>
        (Knife, Readings, _settings, _cancellation) = (knife, readings, settings, cancellation);

    /// <summary>The passes made.</summary>
    public IReadOnlyList<Pass> Passes => _passes;

    /// <summary>The knife after them.</summary>
    public Knife Knife { get; private set; }

    /// <summary>The readings after them.</summary>
    public StopReadings Readings { get; private set; }

    /// <summary>Why the passes ended early.</summary>
    public (Pass Pass, PassProblem Problem)? Refused { get; private set; }

    /// <summary>The open flat as its slice finds it.</summary>
    public FaceCut? OpenFlat { get; private set; }

    /// <summary>The half-stop face as its slice finds it.</summary>
    public FaceCut? HalfStopFace { get; private set; }

    /// <summary>The closed face as its slice finds it.</summary>
    public FaceCut? ClosedFace { get; private set; }

    /// <summary>Area taken off the open flat for each millimetre, about: its length.</summary>
    public double OpenFlatLengthMm { get; private set; }

    /// <summary>Depth of the reliefs in the faces that were cut; 0 for none.</summary>
    public double ReliefMm => _settings.ReliefDepthMm;

    private CutLine? _openLine;
    private CutLine? _halfStopLine;
    private CutLine? _closedLine;

    /// <summary>The face that serves a stop.</summary>
    public FaceCut? FaceOf(Stop stop) =>
        stop switch
        {
            Stop.Open => OpenFlat,
            Stop.HalfStop => HalfStopFace,
            _ => ClosedFace,
        };

    /// <summary>The line to which it was cut; null when it was not.</summary>
    public CutLine? LineOf(Stop stop) =>
        stop switch
        {
            Stop.Open => _openLine,
            Stop.HalfStop => _halfStopLine,
            _ => _closedLine,
        };

    /// <summary>What came off where.</summary>
    public PlanAmounts Amounts { get; private set; }

    /// <summary>The cuts of other amounts, which count where they counted here.</summary>
    public PlanCuts CutsOf(PlanAmounts amounts)
    {
        CutLine? Line(FaceDepths depths, FaceCut? face) => depths.IsNothing ? null : face?.Line(depths);
        return new PlanCuts(amounts.OpenFlat, Line(amounts.HalfStop, HalfStopFace), Line(amounts.Closed, ClosedFace));
    }

    /// <summary>Makes the passes.</summary>
    /// <param name="knife">The knife before the first.</param>
    /// <param name="readings">How it reads.</param>
    /// <param name="cuts">What to cut.</param>
    /// <param name="ways">How it is done.</param>
    /// <param name="settings">What is to be reached and what may be taken.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    public static PlanTrial Make(
        Knife knife,
        StopReadings readings,
        PlanCuts cuts,
        PlanWays ways,
        PlanSettings settings,
        CancellationToken cancellation
    )
    {
        PlanTrial trial = new(knife, readings, settings, cancellation);
        trial.Run(cuts, ways);
        trial.Read();
        return trial;
    }

    private void Run(PlanCuts cuts, PlanWays ways)
    {
        OpenFlatLengthMm = Workpiece.Of(Knife, Part.Blade).LengthOf(_openFlat);
        bool cutsHalfStop = cuts.HalfStop is not null;
        OpenFlat = FaceCut.Of(Knife, Readings, _openFlat);
        FaceDepths open = Worth(cuts.OpenFlat);
        if (!open.IsNothing)
        {
            Do(Slice(_openFlat, open));
            _openLine = OpenFlat?.Line(open);
            Amounts = Amounts with { OpenFlat = open };
        }

        foreach (Site corner in ways.BearingCorners)
        {
            Round(corner);
        }

        RoundUnless(cutsHalfStop, BladeFace.OpenCorner);
        Read();
        ClosedFace = FaceCut.Of(Knife, Readings, _closedFace);
        double kickMm = KickRadiusMm();
        (_closedLine, FaceDepths closed) = SliceClosed(cuts.Closed, ways.TipFirst);
        Round(_kick, Math.Max(kickMm, _settings.LeastCornerRadiusMm));
        RoundUnless(cutsHalfStop, BladeFace.ClosedCorner);
        FaceDepths halfStop = default;
        if (Readings.HasHalfStop)
        {
            Read();
            HalfStopFace = FaceCut.Of(Knife, Readings, _halfStopFace);
            (_halfStopLine, halfStop) = SliceOnce(HalfStopFace, cuts.HalfStop);
            RoundUnless(!cutsHalfStop, BladeFace.ClosedCorner);
            RoundUnless(!cutsHalfStop, BladeFace.OpenCorner);
            Relieve(_halfStopFace, halfStop);
        }

        Relieve(_closedFace, closed);
        Amounts = Amounts with { HalfStop = halfStop, Closed = closed };
    }

    /// <summary>Slices the closed face in one, or first by its ends and then level, to the same line.</summary>
    private (CutLine? Line, FaceDepths Depths) SliceClosed(CutLine? to, bool tipFirst)
    {
        if (ClosedFace is not { } face || to is not { } wanted)
        {
            return default;
        }

        FaceDepths depths = Worth(face.DepthsTo(wanted));
        double level = Math.Min(depths.FrontMm, depths.RearMm);
        FaceDepths tip = Worth(new FaceDepths(depths.FrontMm - level, depths.RearMm - level));
        if (!tipFirst || level <= 0 || tip.IsNothing)
        {
            return SliceOnce(ClosedFace, to);
        }

        CutLine line = face.Line(depths);
        Do(Slice(_closedFace, tip));
        Read();
        SliceOnce(FaceCut.Of(Knife, Readings, _closedFace), line);
        return (line, depths);
    }

    private (CutLine? Line, FaceDepths Depths) SliceOnce(FaceCut? cut, CutLine? to)
    {
        FaceDepths depths = cut is not null && to is { } wanted ? Worth(cut.DepthsTo(wanted)) : default;
        if (depths.IsNothing)
        {
            return default;
        }

        Do(Slice(cut!.Face, depths));
        return (cut.Line(depths), depths);
    }

    private static FaceDepths Worth(FaceDepths depths) => new(Worth(depths.FrontMm), Worth(depths.RearMm));

    private static double Worth(double depthMm) => depthMm > NothingMm ? depthMm : 0;

    private static FlatSlice Slice(Site face, FaceDepths depths) =>
        new(face) { FrontDepthMm = depths.FrontMm, RearDepthMm = depths.RearMm };

    private void RoundUnless(bool later, BladeFace corner)
    {
        if (!later)
        {
            Round(Site.On(corner));
        }
    }

    /// <summary>The radius that the kick has, and keeps when the closed face beside it is cut; 0 for none.</summary>
    private double KickRadiusMm()
    {
        Workpiece blade = Workpiece.Of(Knife, Part.Blade);
        return CornerSpot.Of(blade, _kick)?.RadiusIn(blade) ?? 0;
    }

    private void Round(Site corner) => Round(corner, _settings.LeastCornerRadiusMm);

    /// <summary>Rounds a corner unless it is as round already, or none.</summary>
    private void Round(Site corner, double radiusMm)
    {
        if (radiusMm > 0)
        {
            Do(new RoundCorner(corner, radiusMm), PassReasons.AddsMetal, PassReasons.NoCorner);
        }
    }

    /// <summary>Hollows a face that was cut flat.</summary>
    private void Relieve(Site face, FaceDepths depths)
    {
        if (_settings.ReliefDepthMm > 0 && !depths.IsNothing)
        {
            Do(new ReliefArc(face, _settings.ReliefDepthMm, _settings.ReliefMarginMm, _settings.ReliefMarginMm));
        }
    }

    private void Do(Pass pass, params ReadOnlySpan<string> leftOutFor)
    {
        if (Refused is not null)
        {
            return;
        }

        (PassResult? result, PassProblem? problem) = PassCut.Make(
            Knife,
            Readings,
            pass,
            _settings.Simulation.Passes,
            _cancellation
        );
        if (result is not null)
        {
            Knife = result.Knife;
            _isStale = true;
            _passes.Add(pass);
        }
        else if (!leftOutFor.Contains(problem!.Reason))
        {
            Refused = (pass, problem);
        }
    }

    private void Read()
    {
        if (_isStale)
        {
            Readings = StopCheck.Run(Knife, _settings.Simulation.Bench, _cancellation).Readings;
            _isStale = false;
        }
    }
}

/// <summary>How the passes of a plan are made, apart from their amounts.</summary>
/// <param name="TipFirst">Whether the closed face is cut by its ends before it is cut level.</param>
/// <param name="BearingCorners">Corners that are rounded because they bear, beside those that always are.</param>
internal readonly record struct PlanWays(bool TipFirst, ImmutableArray<Site> BearingCorners);
