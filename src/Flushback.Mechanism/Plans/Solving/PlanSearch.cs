using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>Finds the amounts that take least metal, by trials on the real knife.</summary>
/// <remarks>
/// About each trial reading and rest angle are linear in the depths, with exact gradients from the contacts; the area is
/// taken as it is. For each face that leaves one way to go, the tilt, along which the area is least at an end or where
/// its slope vanishes. The next trial is made there, until nothing moves: Newton's method on the conditions of an
/// optimum, with the bounds that hold found anew each time. What comes off the open flat is a matter of its own
/// (<see cref="OpenFlatNeed"/>).
/// </remarks>
internal sealed class PlanSearch
{
    // By then a knife reads nearly as it will: it is seen early which corners bear.
    private const int FirstLook = 3;

    private const int MostStepsBack = 5;

    // With the tilt settled Newton's method needs a few.
    private const int MostElsewhere = 10;

    // A plan has settled when its readings are right to this and its depths no longer move by that, in millimetres.
    private const double ReadingMm = 1e-6;
    private const double DepthMm = 2e-6;

    private readonly Knife _knife;
    private readonly StopReadings _start;
    private readonly PlanSettings _settings;
    private readonly CancellationToken _cancellation;
    private readonly HashSet<Stop> _cut = [];
    private readonly Dictionary<Stop, TiltHeld> _held = [];
    private readonly Dictionary<Stop, double> _wanted = [];

    // Area more for each millimetre a stop is to read lower, as the last trial had it.
    private readonly Dictionary<Stop, double> _prices = [];
    private readonly Dictionary<Stop, TiltBracket> _brackets = new()
    {
        [Stop.HalfStop] = new TiltBracket(),
        [Stop.Closed] = new TiltBracket(),
    };
    private readonly BearingCorners _corners;
    private readonly bool _tipFirst;
    private int _trials;

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

        _tipFirst = !Windows[Stop.Closed].Contains(start.At(Stop.Closed)!.RestAngle);
        _corners = new BearingCorners(settings);
        _corners.Look(knife, start);
        OpenFlat = new OpenFlatNeed(knife, start, Windows[Stop.Open], settings, cancellation);
        Trial = Make(default(PlanCuts));
    }

    /// <summary>Where each stop may rest.</summary>
    public ImmutableDictionary<Stop, AngleWindow> Windows { get; }

    /// <summary>False when a depth of the tip is wanted that no angle in the window gives.</summary>
    public bool HasTipWindow { get; } = true;

    /// <summary>The knife before the first pass.</summary>
    public Knife Knife => _knife;

    /// <summary>How it reads.</summary>
    public StopReadings Start => _start;

    /// <summary>The last trial.</summary>
    public PlanTrial Trial { get; private set; }

    /// <summary>Its amounts.</summary>
    public PlanAmounts Amounts => Trial.Amounts;

    /// <summary>True when nothing moves any more.</summary>
    public bool HasSettled { get; private set; }

    /// <summary>What has to come off the open flat.</summary>
    public OpenFlatNeed OpenFlat { get; }

    /// <summary>Searches.</summary>
    public static PlanSearch Run(Knife knife, StopReadings start, PlanSettings settings, CancellationToken cancellation)
    {
        PlanSearch search = new(knife, start, settings, cancellation);
        for (int i = 0; i < settings.MostTrials && !search.HasSettled && search.Trial.Refused is null; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            search.Improve();
        }

        search.TryElsewhere();
        return search;
    }

    /// <summary>Searches again on the same knife with other settings.</summary>
    public PlanSearch With(PlanSettings settings) => Run(_knife, _start, settings, _cancellation);

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
        double level = Amounts.OpenFlat.LevelMm;
        double perOpen =
            level > 0 ? Trial.OpenFlatLengthMm + faces.Sum(face => face.ReadingMultiplier * OpenFlat.RisePerMm) : 0;
        return new PlanOptimum(level, perOpen, OpenFlat.Turned(Trial) is { } turned ? [turned, .. faces] : faces);
    }

    private void Improve()
    {
        (Stop Stop, FaceModel Model)[] models = [.. Models()];
        FaceDepths open = OpenFlat.Of(Trial, models);
        PlanAmounts next = Amounts with { OpenFlat = open };
        double rise = OpenFlat.RisePerMm * (open.LevelMm - Amounts.OpenFlat.LevelMm);
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
        if ((HasSettled || _trials == FirstLook) && _corners.Look(Trial.Knife, Trial.Readings))
        {
            HasSettled = false;
            ForgetBrackets();
            Trial = Make(Trial.CutsOf(Amounts));
        }
        else if (!HasSettled)
        {
            PlanTrial last = Trial;
            Trial = Make(last.CutsOf(next));
            for (int i = 0; i < MostStepsBack && LosesRest(last.Readings); i++)
            {
                next = last.Amounts.HalfwayTo(next);
                Trial = Make(last.CutsOf(next));
            }
        }
    }

    /// <summary>Tries what steps downhill do not come to, and takes the cheapest.</summary>
    private void TryElsewhere()
    {
        foreach (Stop stop in _held.Keys.ToArray())
        {
            PlanTrial? best = HasSettled ? Trial : null;
            ImmutableDictionary<Stop, TiltHeld> heldAtBest = _held.ToImmutableDictionary();
            foreach (Action hold in Elsewhere(stop).ToArray())
            {
                hold();
                HasSettled = false;
                for (int i = 0; i < MostElsewhere && !HasSettled && Trial.Refused is null; i++)
                {
                    _cancellation.ThrowIfCancellationRequested();
                    Improve();
                }

                if (HasSettled && (best is null || LeftMm2(Trial) > LeftMm2(best)))
                {
                    (best, heldAtBest) = (Trial, _held.ToImmutableDictionary());
                }
            }

            (Trial, HasSettled) = (best ?? Trial, best is not null);
            foreach ((Stop held, TiltHeld by) in heldAtBest)
            {
                _held[held] = by;
            }
        }
    }

    /// <summary>
    /// Where contacts change the reading may jump a little, and with it the metal it takes: each side at a tilt of its own. And
    /// an end of the tilts beyond a rise, where less metal goes.
    /// </summary>
    private IEnumerable<Action> Elsewhere(Stop stop)
    {
        TiltBracket bracket = _brackets[stop];
        if (_held[stop] == TiltHeld.ByContacts && bracket.Sides is { } sides)
        {
            yield return () => bracket.HoldAt(sides.LeastMm);
            yield return () => bracket.HoldAt(sides.MostMm);
        }
        else if (HasSettled && Model(stop) is { } model && FaceStep.CheaperEnd(model, _settings.AimMm(stop)) is { } end)
        {
            yield return () => bracket.HoldBy(end);
        }
    }

    private static double LeftMm2(PlanTrial trial) => trial.Knife.Blade.AreaMm2 + trial.Knife.Spring.AreaMm2;

    /// <summary>True when a stop that rested no longer does: its contacts then tell nothing, and the step was too long.</summary>
    private bool LosesRest(StopReadings last) =>
        Trial.Readings.Stops.Any(reading => !reading.Rests && last.At(reading.Stop) is { Rests: true });

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

    private PlanTrial Make(PlanCuts cuts) =>
        PlanTrial.Make(_knife, _start, cuts, new PlanWays(_tipFirst, _corners.Rounded), _settings, _cancellation);

    private IEnumerable<(Stop Stop, FaceModel Model)> Models()
    {
        foreach (StopReading reading in Trial.Readings.Stops.Where(reading => reading.Stop != Stop.Open))
        {
            if (Model(reading.Stop) is { } model)
            {
                yield return (reading.Stop, model);
            }
        }
    }

    private FaceModel? Model(Stop stop)
    {
        double price = _prices.GetValueOrDefault(stop == Stop.Closed ? Stop.HalfStop : Stop.Closed);
        return FaceModel.Of(Trial, Trial.Readings.At(stop)!, Amounts.At(stop), Windows[stop], price);
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
}
