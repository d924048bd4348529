using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>The passes of given amounts in the order of the bench, made on the knife and read at the end.</summary>
/// <remarks>
/// Open flat, then the closed face by its ends and level, then the half-stop face; each corner is rounded as soon as both
/// faces beside it are down, since a slice after it would leave a sharp corner again. The depths anticipate what the
/// rounds do to the zero.
/// </remarks>
internal sealed class PlanTrial
{
    // Depths below this are nothing: a tenth of a micrometre.
    private const double NothingMm = 1e-4;

    private static readonly Site _openFlat = Site.On(BladeFace.OpenFlat);
    private static readonly Site _halfStopFace = Site.On(BladeFace.HalfStopFace);
    private static readonly Site _closedFace = Site.On(BladeFace.ClosedFace);

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

    /// <summary>The half-stop face as its slice finds it.</summary>
    public FaceCut? HalfStopFace { get; private set; }

    /// <summary>The closed face as its slice finds it.</summary>
    public FaceCut? ClosedFace { get; private set; }

    /// <summary>Area taken off the open flat for each millimetre, about: its length.</summary>
    public double OpenFlatLengthMm { get; private set; }

    /// <summary>The face that serves a stop.</summary>
    public FaceCut? FaceOf(Stop stop) => stop == Stop.HalfStop ? HalfStopFace : ClosedFace;

    /// <summary>Makes the passes.</summary>
    public static PlanTrial Make(
        Knife knife,
        StopReadings readings,
        PlanAmounts amounts,
        bool tipFirst,
        PlanSettings settings,
        CancellationToken cancellation
    )
    {
        PlanTrial trial = new(knife, readings, settings, cancellation);
        trial.Run(amounts, tipFirst);
        trial.Read();
        return trial;
    }

    private void Run(PlanAmounts amounts, bool tipFirst)
    {
        OpenFlatLengthMm = Workpiece.Of(Knife, Part.Blade).LengthOf(_openFlat);
        if (amounts.OpenFlatMm > NothingMm)
        {
            Do(Slice(_openFlat, new FaceDepths(amounts.OpenFlatMm, amounts.OpenFlatMm)));
        }

        Read();
        ClosedFace = FaceCut.Of(Knife, Readings, _closedFace);
        SliceClosed(amounts.Closed, tipFirst);
        Round(BladeFace.Kick);
        if (Readings.HasHalfStop)
        {
            Read();
            HalfStopFace = FaceCut.Of(Knife, Readings, _halfStopFace);
            SliceOnce(_halfStopFace, amounts.HalfStop);
            Relieve(_halfStopFace, amounts.HalfStop);
        }

        Relieve(_closedFace, amounts.Closed);
        Round(BladeFace.ClosedCorner);
        Round(BladeFace.OpenCorner);
    }

    private void SliceClosed(FaceDepths depths, bool tipFirst)
    {
        double level = Math.Min(depths.FrontMm, depths.RearMm);
        FaceDepths tip = new(depths.FrontMm - level, depths.RearMm - level);
        bool both = level > NothingMm && Math.Max(tip.FrontMm, tip.RearMm) > NothingMm;
        if (!tipFirst || !both)
        {
            SliceOnce(_closedFace, depths);
            return;
        }

        SliceOnce(_closedFace, tip);
        Read();
        SliceOnce(_closedFace, new FaceDepths(level, level));
    }

    private void SliceOnce(Site face, FaceDepths depths)
    {
        FaceDepths worth = new(Worth(depths.FrontMm), Worth(depths.RearMm));
        if (!worth.IsNothing)
        {
            Do(Slice(face, worth));
        }
    }

    private static double Worth(double depthMm) => depthMm > NothingMm ? depthMm : 0;

    private static FlatSlice Slice(Site face, FaceDepths depths) =>
        new(face) { FrontDepthMm = depths.FrontMm, RearDepthMm = depths.RearMm };

    /// <summary>Rounds a corner unless it is as round already, or none.</summary>
    private void Round(BladeFace corner)
    {
        if (_settings.LeastCornerRadiusMm > 0)
        {
            Do(
                new RoundCorner(Site.On(corner), _settings.LeastCornerRadiusMm),
                PassReasons.AddsMetal,
                PassReasons.NoCorner
            );
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
