using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>What has to come off the open flat, from trial to trial.</summary>
/// <remarks>
/// <para>
/// Level, metal off it makes every stop read higher and costs more the more it is; so it is the least that lets the lowest
/// stop reach its target with its own face hardly touched.
/// </para>
/// <para>
/// At one end, it turns the open blade that rests on the flat by two contacts: as little as brings its angle to the edge of
/// its window. Where the shoulder holds the blade nothing off the flat does that.
/// </para>
/// </remarks>
internal sealed class OpenFlatNeed
{
    // The dial falls by about as much as comes off; far from that the open contacts are about to change.
    private const double LeastRise = 0.5;
    private const double MostRise = 2;

    // A difference that tells how the dial follows.
    private const double TellingMm = 1e-5;

    private readonly Knife _knife;
    private readonly StopReadings _start;
    private readonly AngleWindow _window;
    private readonly PlanSettings _settings;
    private readonly Lazy<OpenFlatLimit> _limit;
    private readonly HashSet<Stop> _low = [];
    private (FaceDepths Depths, double ZeroMm)? _before;

    public OpenFlatNeed(
        Knife knife,
        StopReadings start,
        AngleWindow window,
        PlanSettings settings,
        CancellationToken cancellation
    )
    {
        (_knife, _start, _window, _settings) = (knife, start, window, settings);
        _limit = new(() => OpenFlatLimit.Of(knife, start, settings, cancellation));
    }

    /// <summary>At the deeper end, were there no bound to it.</summary>
    public double WantedMm => Wanted.DeeperMm;

    /// <summary>At either end, were there no bound to it.</summary>
    public FaceDepths Wanted { get; private set; }

    /// <summary>True when that is more than may come off.</summary>
    public bool IsShort => WantedMm > 0 && WantedMm > MostMm;

    /// <summary>Rise of the other readings for each millimetre off it.</summary>
    public double RisePerMm { get; private set; }

    /// <summary>Most that may and can come off.</summary>
    public double MostMm => _limit.Value.MostMm;

    /// <summary>Why no more can come off; null when only the settings say so.</summary>
    public PassProblem? Problem => _limit.IsValueCreated ? _limit.Value.Problem : null;

    /// <summary>The depths to try after a trial.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="models">The other stops about it.</param>
    public FaceDepths Of(PlanTrial trial, IEnumerable<(Stop Stop, FaceModel Model)> models)
    {
        RisePerMm = Rise(trial);
        _before = (trial.Amounts.OpenFlat, ZeroMm(trial));
        double level = LevelMm(trial, models);
        FaceDepths end = AboutAngle(trial)?.Highest()?.Depths ?? default;
        Wanted = new FaceDepths(level + end.FrontMm, level + end.RearMm);
        return IsShort ? new FaceDepths(Math.Min(Wanted.FrontMm, MostMm), Math.Min(Wanted.RearMm, MostMm)) : Wanted;
    }

    /// <summary>The balance where the flat is cut more at one end; null where it is not.</summary>
    public FaceOptimum? Turned(PlanTrial trial)
    {
        FaceDepths all = trial.Amounts.OpenFlat;
        return AboutAngle(trial) is { At.IsNothing: false } model
            ? FaceBalance.Turned(Stop.Open, model) with
            {
                FrontMm = all.FrontMm,
                RearMm = all.RearMm,
            }
            : null;
    }

    /// <summary>Open about a trial, by what came off one end more than off the other; null where the flat does not hold the angle.</summary>
    private FaceModel? AboutAngle(PlanTrial trial)
    {
        StopReading open = trial.Readings.Stops[0];
        FaceDepths all = trial.Amounts.OpenFlat;
        FaceDepths end = new(all.FrontMm - all.LevelMm, all.RearMm - all.LevelMm);
        return open.Contacts.All(IsOnFlat) ? FaceModel.Of(trial, open, end, _window, otherPrice: 0) : null;
    }

    /// <summary>True for a contact that metal off the flat takes down, false for one of shoulder and end face.</summary>
    public static bool IsOnFlat(Contact contact) =>
        contact.BladeFace is not BladeFace.Shoulder && contact.SpringFace is not SpringFace.EndFace;

    /// <summary>The least with which every stop reaches its target.</summary>
    private double LevelMm(PlanTrial trial, IEnumerable<(Stop Stop, FaceModel Model)> models)
    {
        double wanted = 0;
        foreach ((Stop stop, FaceModel model) in models)
        {
            if (model.Highest() is not { } highest)
            {
                continue;
            }

            // Without what the open flat has given so far.
            double without = highest.LiftMm - (RisePerMm * trial.Amounts.OpenFlat.LevelMm);
            if (without < _settings.AimMm(stop) - _settings.Targets.For(stop).ToleranceMm)
            {
                _low.Add(stop);
            }

            if (_low.Contains(stop))
            {
                wanted = Math.Max(wanted, (_settings.AimMm(stop) - without) / RisePerMm);
            }
        }

        return wanted;
    }

    /// <summary>Where the dial stands open, against where it stood before the first pass.</summary>
    private double ZeroMm(PlanTrial trial) => _knife.LiftMm(_start.OpenRotation, trial.Readings.OpenRotation);

    /// <summary>How far the dial falls open: by the contacts, and once two trials tell it, by what it did.</summary>
    /// <remarks>What carries open may change from flat to round within a fraction of a degree, so the step counts more.</remarks>
    private double Rise(PlanTrial trial)
    {
        FaceDepths now = trial.Amounts.OpenFlat;
        if (_before is { } before && Math.Abs(now.LevelMm - before.Depths.LevelMm) > TellingMm)
        {
            double rise = (before.ZeroMm - ZeroMm(trial)) / (now.LevelMm - before.Depths.LevelMm);
            return Math.Clamp(rise, LeastRise, MostRise);
        }

        if (RisePerMm > 0)
        {
            return RisePerMm;
        }

        RestGradient? gradient = RestGradient.Of(trial.Knife, trial.Readings.Stops[0]);
        double fall = gradient?.Change((_, _, contact) => IsOnFlat(contact) ? 1 : 0).LiftMm ?? -1;
        return -fall is >= LeastRise and <= MostRise ? -fall : 1;
    }
}
