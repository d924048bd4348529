using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Tolerances.Chance;

namespace Flushback.Mechanism.Tolerances;

/// <summary>Works a study's parts into figures.</summary>
internal sealed class SpreadFigures
{
    private readonly ToleranceSettings _settings;
    private readonly ToleranceList _list;
    private readonly PartChance _chance;
    private readonly ImmutableArray<Derivatives> _derivatives;
    private readonly ImmutableArray<PartReading> _parts;
    private readonly CancellationToken _cancellation;

    public SpreadFigures(
        ToleranceSettings settings,
        ToleranceList list,
        PartChance chance,
        ImmutableArray<Derivatives> derivatives,
        ImmutableArray<PartReading> parts,
        CancellationToken cancellation
    ) =>
        (_settings, _list, _chance, _derivatives, _parts, _cancellation) = (
            settings,
            list,
            chance,
            derivatives,
            parts,
            cancellation
        );

    public PartCounts Counts =>
        new(
            _parts.Length,
            _parts.Count(part => !part.IsAssembled),
            _parts.Count(part => part is { IsAssembled: true, Open.Rests: false }),
            _parts.Count(part => part is { IsAssembled: true, HalfStop.Rests: false }),
            _parts.Count(part => part is { IsAssembled: true, Closed.Rests: false })
        );

    public CountedShare Within => Share(_parts.Count(part => IsWithin(part, null, default)));

    /// <summary>How each outcome is spread; pull and stress by their derivatives.</summary>
    public ImmutableArray<Spread> Spreads() => [.. _derivatives.Select(SpreadOf)];

    /// <summary>What each tolerance brings, the greatest gain first, then the greatest share in the readings.</summary>
    public ImmutableArray<Tightening> Tightenings()
    {
        int[] within = WithinIfHalved();
        return
        [
            .. Enumerable
                .Range(0, _list.Tolerances.Length)
                .Select(t => new Tightening(t, [.. _derivatives.Select(d => VarianceShare(d, t))], Share(within[t])))
                .OrderByDescending(tightening => tightening.WithinIfHalved.Share)
                .ThenByDescending(ShareInReadings),
        ];
    }

    private double ShareInReadings(Tightening tightening) =>
        tightening
            .VarianceShares.Where((_, i) => _derivatives[i].Of is Outcome.HalfStopLift or Outcome.ClosedLift)
            .DefaultIfEmpty(0)
            .Max();

    private CountedShare Share(int count) => CountedShare.Of(count, _parts.Length);

    private Spread SpreadOf(Derivatives derivatives)
    {
        double[] values = [.. ValuesOf(derivatives)];
        Array.Sort(values);
        double mean = values.Length == 0 ? double.NaN : values.Average();
        double squares = values.Sum(value => (value - mean) * (value - mean));
        return new Spread(
            derivatives.Of,
            derivatives.AsDrawn,
            values.Length,
            mean,
            values.Length > 1 ? Math.Sqrt(squares / (values.Length - 1)) : double.NaN,
            Math.Sqrt(Variance(derivatives, 0, _list.Dimensions.Length)),
            [.. Spread.Percents.Select(percent => Percentile(values, percent))],
            TargetOf(derivatives.Of) is { } target ? Share(values.Count(value => IsInWindow(value, target))) : null
        );
    }

    private IEnumerable<double> ValuesOf(Derivatives derivatives)
    {
        if (!Outcomes.OfHandle.Contains(derivatives.Of))
        {
            _cancellation.ThrowIfCancellationRequested();
            return _parts.Select(part => part.Of(derivatives.Of)).OfType<double>();
        }

        double[] deviations = new double[_list.Dimensions.Length];
        return Enumerable
            .Range(0, _parts.Length)
            .Where(part => _parts[part].IsAssembled)
            .Select(part =>
            {
                _cancellation.ThrowIfCancellationRequested();
                _chance.Draw(part, deviations);
                return derivatives.AsDrawn + derivatives.Change(deviations);
            });
    }

    /// <summary>By straight lines between the sorted values, the first at 0 and the last at 100 percent.</summary>
    private static double Percentile(double[] sorted, double percent)
    {
        if (sorted.Length == 0)
        {
            return double.NaN;
        }

        double place = percent / 100 * (sorted.Length - 1);
        int below = (int)place;
        int above = Math.Min(below + 1, sorted.Length - 1);
        return sorted[below] + ((place - below) * (sorted[above] - sorted[below]));
    }

    private double VarianceShare(Derivatives derivatives, int tolerance)
    {
        double all = Variance(derivatives, 0, _list.Dimensions.Length);
        int first = FirstOf(tolerance);
        return all > 0 ? Variance(derivatives, first, first + CountOf(tolerance)) / all : 0;
    }

    private double Variance(Derivatives derivatives, int from, int to) =>
        PropagationLaw.Variance(
            derivatives.PerMm.AsSpan()[from..to],
            [.. _list.Dimensions[from..to].Select(_chance.StandardDeviationMm)]
        );

    private int[] WithinIfHalved()
    {
        int[] within = new int[_list.Tolerances.Length];
        double[] deviations = new double[_list.Dimensions.Length];
        for (int part = 0; part < _parts.Length; part++)
        {
            _cancellation.ThrowIfCancellationRequested();
            _chance.Draw(part, deviations);
            for (int t = 0; t < within.Length; t++)
            {
                int first = FirstOf(t);
                within[t] += IsWithin(_parts[part], first, deviations.AsSpan(first, CountOf(t))) ? 1 : 0;
            }
        }

        return within;
    }

    /// <summary>True when a part reads within its windows, with half of some of its deviations taken back.</summary>
    private bool IsWithin(PartReading part, int? first, ReadOnlySpan<double> halvedMm)
    {
        if (!part.Rests)
        {
            return false;
        }

        foreach (Derivatives derivatives in _derivatives)
        {
            if (TargetOf(derivatives.Of) is { } target && part.Of(derivatives.Of) is { } value)
            {
                for (int i = 0; first is { } start && i < halvedMm.Length; i++)
                {
                    value -= derivatives.PerMm[start + i] * halvedMm[i] / 2;
                }

                if (!IsInWindow(value, target))
                {
                    return false;
                }
            }
        }

        return true;
    }

    private static bool IsInWindow(double value, StopTarget target) =>
        Math.Abs(value - target.LiftMm) <= target.ToleranceMm;

    // Open the dial is set to zero, so every part is right there.
    private StopTarget? TargetOf(Outcome outcome) =>
        outcome switch
        {
            Outcome.HalfStopLift => _settings.Bench.Targets.HalfStop,
            Outcome.ClosedLift => _settings.Bench.Targets.Closed,
            _ => null,
        };

    private int FirstOf(int tolerance) =>
        _list.Dimensions.IndexOf(_list.Dimensions.First(d => d.Tolerance == tolerance));

    private int CountOf(int tolerance) => _list.Dimensions.Count(d => d.Tolerance == tolerance);
}
