using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>Finds the amounts that take least metal, by trials on the real knife.</summary>
/// <remarks>
/// <para>
/// About each trial reading and rest angle are linear in the depths, with exact gradients from the contacts; the area is
/// taken as it is. For each face that leaves one way to go, the tilt, along which the area is least at an end or where
/// its slope vanishes. The next trial is made there, until nothing moves: Newton's method on the conditions of an
/// optimum, with the bounds that hold found anew each time.
/// </para>
/// <para>
/// Metal off the open flat makes every stop read higher and costs more the more it is; so it is the least that lets the
/// lowest stop reach its target with its own face hardly touched.
/// </para>
/// </remarks>
internal sealed class PlanSearch
{
    // By then a knife reads nearly as it will: it is seen early whether its nose bears.
    private const int FirstLook = 3;

    private const int MostStepsBack = 5;

    // A plan has settled when its readings are right to this and its depths no longer move by that, in millimetres.
    private const double ReadingMm = 1e-6;
    private const double DepthMm = 2e-6;

    // The dial falls by about as much as comes off the open flat; far from that the open contacts are about to change.
    private const double LeastRise = 0.5;
    private const double MostRise = 2;

    // Off the open flat, a difference that tells how the dial follows.
    private const double TellingMm = 1e-5;

    private readonly Knife _knife;
    private readonly StopReadings _start;
    private readonly PlanSettings _settings;
    private readonly CancellationToken _cancellation;
    private readonly HashSet<Stop> _cut = [];
    private readonly HashSet<Stop> _low = [];
    private readonly Dictionary<Stop, TiltHeld> _held = [];
    private readonly Dictionary<Stop, double> _wanted = [];

    // Area more for each millimetre a stop is to read lower, as the last trial had it.
    private readonly Dictionary<Stop, double> _prices = [];
    private readonly Dictionary<Stop, TiltBracket> _brackets = new()
    {
        [Stop.HalfStop] = new TiltBracket(),
        [Stop.Closed] = new TiltBracket(),
    };
    private PlanWays _ways;
    private bool _wasWithoutRound;
    private int _trials;
    private readonly Lazy<OpenFlatLimit> _openFlatLimit;
    private (double OpenFlatMm, double ZeroMm)? _before;

    private PlanSearch(Knife knife, StopReadings start, PlanSettings settings, CancellationToken cancellation)
    {
        (_knife, _start, _settings, _cancellation) = (knife, start, settings, cancellation);
        Windows = start.Stops.ToImmutableDictionary(
            reading => reading.Stop,
            reading => AngleWindow.About(reading, settings)
        );
        if (settings.TipDepth is { } depth)
        {
            AngleWindow? withTip = Windows[Stop.Closed].WithTip(knife, depth);
            HasTipWindow = withTip is not null;
            Windows = Windows.SetItem(Stop.Closed, withTip ?? Windows[Stop.Closed]);
        }

        _ways = new PlanWays(
            TipFirst: !Windows[Stop.Closed].Contains(start.At(Stop.Closed)!.RestAngle),
            RoundsNose: settings.LeastCornerRadiusMm > 0 && CarriesOnNose(start)
        );
        _openFlatLimit = new(() => OpenFlatLimit.Of(knife, start, settings, cancellation));
        Trial = Make(default(PlanCuts));
    }

    /// <summary>Where each stop may rest.</summary>
    public ImmutableDictionary<Stop, AngleWindow> Windows { get; }

    /// <summary>False when a depth of the tip is wanted that no angle in the window gives.</summary>
    public bool HasTipWindow { get; } = true;

    /// <summary>How the knife reads before the first pass.</summary>
    public StopReadings Start => _start;

    /// <summary>The last trial.</summary>
    public PlanTrial Trial { get; private set; }

    /// <summary>Its amounts.</summary>
    public PlanAmounts Amounts => Trial.Amounts;

    /// <summary>True when nothing moves any more.</summary>
    public bool HasSettled { get; private set; }

    /// <summary>Off the open flat, were there no bound to it.</summary>
    public double OpenFlatWantedMm { get; private set; }

    /// <summary>Rise of the other readings for each millimetre off the open flat.</summary>
    public double RisePerOpenMm { get; private set; }

    /// <summary>Most that may and can come off the open flat.</summary>
    public double MostOffOpenFlatMm => _openFlatLimit.Value.MostMm;

    /// <summary>Why no more can come off it; null when only the settings say so.</summary>
    public PassProblem? OpenFlatProblem => _openFlatLimit.IsValueCreated ? _openFlatLimit.Value.Problem : null;

    /// <summary>Searches.</summary>
    public static PlanSearch Run(Knife knife, StopReadings start, PlanSettings settings, CancellationToken cancellation)
    {
        PlanSearch search = new(knife, start, settings, cancellation);
        for (int i = 0; i < settings.MostTrials && !search.HasSettled && search.Trial.Refused is null; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            search.Improve();
        }

        return search;
    }

    /// <summary>The passes of other amounts, made in the ways of the last trial.</summary>
    public PlanTrial TrialOf(PlanAmounts amounts) => Make(Trial.CutsOf(amounts));

    /// <summary>Why no smaller removal lands on the targets.</summary>
    public PlanOptimum Optimum()
    {
        ImmutableArray<FaceOptimum> faces =
        [
            .. Models()
                .Where(pair => !Amounts.At(pair.Stop).IsNothing)
                .Select(pair =>
                    _held.TryGetValue(pair.Stop, out TiltHeld held)
                        ? FaceBalance.Of(pair.Stop, pair.Model, held)
                        : FaceBalance.Turned(pair.Stop, pair.Model)
                ),
        ];
        double perOpen =
            Amounts.OpenFlatMm > 0
                ? Trial.OpenFlatLengthMm + faces.Sum(face => face.ReadingMultiplier * RisePerOpenMm)
                : 0;
        return new PlanOptimum(Amounts.OpenFlatMm, perOpen, faces);
    }

    private void Improve()
    {
        (Stop Stop, FaceModel Model)[] models = [.. Models()];
        RisePerOpenMm = RisePerOpen();
        double open = OpenFlat(models);
        PlanAmounts next = Amounts with { OpenFlatMm = open };
        double rise = RisePerOpenMm * (open - Amounts.OpenFlatMm);
        double missed = 0;
        foreach ((Stop stop, FaceModel model) in models)
        {
            FaceDepths depths = Depths(stop, model, rise);
            next = next.With(stop, depths);
            missed = _wanted.TryGetValue(stop, out double wanted)
                ? Math.Max(missed, Math.Abs(wanted - model.LiftMm))
                : missed;
        }

        HasSettled = next.DistanceTo(Amounts) < DepthMm && missed < ReadingMm && AreSure();
        _trials++;
        if ((HasSettled || _trials == FirstLook) && NoseIsOtherThanThought())
        {
            HasSettled = false;
            ForgetBrackets();
            Trial = Make(Trial.CutsOf(Amounts));
        }
        else if (!HasSettled)
        {
            _before = (Amounts.OpenFlatMm, ZeroMm);
            PlanTrial last = Trial;
            Trial = Make(last.CutsOf(next));
            for (int i = 0; i < MostStepsBack && LosesRest(last.Readings); i++)
            {
                next = last.Amounts.HalfwayTo(next);
                Trial = Make(last.CutsOf(next));
            }
        }
    }

    /// <summary>True when a stop that rested no longer does: its contacts then tell nothing, and the step was too long.</summary>
    private bool LosesRest(StopReadings last) =>
        Trial.Readings.Stops.Any(reading => !reading.Rests && last.At(reading.Stop) is { Rests: true });

    /// <summary>The nose corner is rounded when it carries a contact; what the cuts have changed about that is seen at the end.</summary>
    /// <remarks>A round that takes the contact away, which without it comes back, is made.</remarks>
    private bool NoseIsOtherThanThought()
    {
        bool carries = CarriesOnNose(Trial.Readings);
        if (_settings.LeastCornerRadiusMm <= 0 || carries == _ways.RoundsNose || (!carries && _wasWithoutRound))
        {
            return false;
        }

        _ways = _ways with { RoundsNose = carries };
        _wasWithoutRound |= !carries;
        return true;
    }

    private bool AreSure() =>
        _held
            .Where(held => held.Value == TiltHeld.ByContacts)
            .Select(held => _brackets[held.Key].IsSure())
            .ToArray()
            .All(isSure => isSure);

    private void ForgetBrackets()
    {
        foreach (Stop stop in _brackets.Keys)
        {
            _brackets[stop] = new TiltBracket();
        }
    }

    private static bool CarriesOnNose(StopReadings readings) =>
        readings.Stops.Any(reading => reading.Contacts.Any(contact => contact.SpringFace == SpringFace.NoseCorner));

    private PlanTrial Make(PlanCuts cuts) => PlanTrial.Make(_knife, _start, cuts, _ways, _settings, _cancellation);

    private IEnumerable<(Stop Stop, FaceModel Model)> Models()
    {
        foreach (StopReading reading in Trial.Readings.Stops.Where(reading => reading.Stop != Stop.Open))
        {
            Stop other = reading.Stop == Stop.Closed ? Stop.HalfStop : Stop.Closed;
            double price = _prices.GetValueOrDefault(other);
            if (FaceModel.Of(Trial, reading, Amounts, Windows[reading.Stop], price) is { } model)
            {
                yield return (reading.Stop, model);
            }
        }
    }

    /// <summary>The least off the open flat that lets every stop reach its target.</summary>
    private double OpenFlat((Stop Stop, FaceModel Model)[] models)
    {
        double wanted = 0;
        foreach ((Stop stop, FaceModel model) in models)
        {
            if (model.Highest() is not { } highest)
            {
                continue;
            }

            // Without what the open flat has given so far.
            double without = highest.LiftMm - (RisePerOpenMm * Amounts.OpenFlatMm);
            if (without < _settings.AimMm(stop) - _settings.Targets.For(stop).ToleranceMm)
            {
                _low.Add(stop);
            }

            if (_low.Contains(stop))
            {
                wanted = Math.Max(wanted, (_settings.AimMm(stop) - without) / RisePerOpenMm);
            }
        }

        OpenFlatWantedMm = wanted;
        return Math.Min(wanted, wanted > 0 ? MostOffOpenFlatMm : 0);
    }

    private FaceDepths Depths(Stop stop, FaceModel model, double riseMm)
    {
        _wanted.Remove(stop);
        _held.Remove(stop);
        _prices.Remove(stop);
        if (model.Highest() is not { } highest)
        {
            return Amounts.At(stop);
        }

        double aim = _settings.AimMm(stop);
        double tolerance = _settings.Targets.For(stop).ToleranceMm;
        double uncut = model.UncutLiftMm + riseMm;
        if (!highest.Depths.IsNothing || uncut > aim + tolerance)
        {
            _cut.Add(stop);
        }

        double reach = highest.LiftMm + riseMm;
        if (!_cut.Contains(stop) || reach <= aim)
        {
            _wanted[stop] = _cut.Contains(stop) ? reach : uncut;
            return highest.Depths;
        }

        _wanted[stop] = aim;
        (FaceDepths depths, TiltHeld held) = FaceStep.Least(model, aim - riseMm, _brackets[stop]);
        _held[stop] = held;
        _prices[stop] = Amounts.At(stop).IsNothing ? 0 : FaceBalance.Of(stop, model, held).ReadingMultiplier;
        return depths;
    }

    /// <summary>Where the dial stands open, against where it stood before the first pass.</summary>
    private double ZeroMm => _knife.LiftMm(_start.OpenRotation, Trial.Readings.OpenRotation);

    /// <summary>How far the dial falls open: by the contacts, and once two trials tell it, by what it did.</summary>
    /// <remarks>What carries open may change from flat to round within a fraction of a degree, so the step counts more.</remarks>
    private double RisePerOpen()
    {
        if (_before is { } before && Math.Abs(Amounts.OpenFlatMm - before.OpenFlatMm) > TellingMm)
        {
            return Math.Clamp((before.ZeroMm - ZeroMm) / (Amounts.OpenFlatMm - before.OpenFlatMm), LeastRise, MostRise);
        }

        if (RisePerOpenMm > 0)
        {
            return RisePerOpenMm;
        }

        static double OffFlat(Contact contact) =>
            contact.BladeFace is BladeFace.Shoulder || contact.SpringFace is SpringFace.EndFace ? 0 : 1;
        RestGradient? gradient = RestGradient.Of(Trial.Knife, Trial.Readings.Stops[0]);
        double rise = gradient is null ? 1 : -gradient.Change((_, _, contact) => OffFlat(contact)).LiftMm;
        return rise is >= LeastRise and <= MostRise ? rise : 1;
    }
}
