using System.Collections.Immutable;
using Flushback.Geometry.Checking;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Measured.Solving;

/// <summary>Looks for the least offsets of the faces with which the real knife reads as measured.</summary>
/// <remarks>
/// Newton's method on the readings of the knife itself; each step goes to the shortest offsets within the limit that the
/// linear readings allow, so it ends at the shortest there are nearby.
/// </remarks>
internal sealed class OffsetSearch
{
    private const int MostSteps = 40;
    private const int FreeSteps = 10;
    private const int MostStepsBack = 8;

    // What tells a slope: far above the rounding of a reading, far below where contacts change.
    private const double TellingMm = 1e-6;

    // A reading this near to what was measured is explained; offsets that move by less have come to rest.
    private const double ExplainedMm = 1e-6;
    private const double StillMm = 1e-7;

    // No dial tells half a micrometre.
    private const double NotToldMm = 5e-4;

    private readonly Knife _drawn;
    private readonly double _mostMm;
    private readonly BenchSettings _bench;
    private readonly CancellationToken _cancellation;
    private readonly ImmutableArray<MeasuredValue> _values;
    private readonly FaceUnknowns _unknowns;
    private Attempt _best;

    private OffsetSearch(
        Knife drawn,
        StopReadings readings,
        MeasuredReadings measured,
        double mostMm,
        BenchSettings bench,
        CancellationToken cancellation
    )
    {
        (_drawn, _mostMm, _bench, _cancellation) = (drawn, mostMm, bench, cancellation);
        _values = [.. MeasuredValue.In(measured)];
        _unknowns = new FaceUnknowns(drawn, readings, measured);
        _best = new Attempt(new double[_unknowns.Count], drawn, readings, Missed(readings));
    }

    /// <summary>True when the readings are explained.</summary>
    public bool HasExplained { get; private set; }

    /// <summary>The knife with the offsets.</summary>
    public Knife Knife => _best.Knife;

    /// <summary>How it reads.</summary>
    public StopReadings Readings => _best.Readings;

    /// <summary>The offsets, one for each face that may be off.</summary>
    public ImmutableArray<FaceOffset> Offsets => _unknowns.OffsetsOf(_best.Amounts);

    /// <summary>Largest difference left, in millimetres of lift.</summary>
    public double ResidualMm => _best.Missed.Max(Math.Abs);

    /// <summary>Which value the nearest offsets miss most, and by how much; null when not even one step could be made.</summary>
    public (string What, string Off)? Nearest { get; private set; }

    /// <summary>Searches.</summary>
    public static OffsetSearch Run(
        Knife drawn,
        StopReadings readings,
        MeasuredReadings measured,
        double mostMm,
        BenchSettings bench,
        CancellationToken cancellation
    )
    {
        OffsetSearch search = new(drawn, readings, measured, mostMm, bench, cancellation);
        search.Search();
        return search;
    }

    private void Search()
    {
        for (int step = 0; step < MostSteps; step++)
        {
            _cancellation.ThrowIfCancellationRequested();

            // Where contacts change the slopes of one side may lead nowhere, and those of the other do.
            if (!Step(step, TellingMm) && !Step(step, -TellingMm))
            {
                break;
            }
        }

        int worst = Enumerable.Range(0, _values.Length).MaxBy(i => Math.Abs(_best.Missed[i]));
        HasExplained = ResidualMm < NotToldMm && IsSound(_best.Knife);
        Nearest = (_values[worst].Name, _values[worst].Say(Math.Abs(_best.Missed[worst])));
    }

    /// <summary>One step by the slopes on one side; false when there is none to make.</summary>
    private bool Step(int step, double tellingMm)
    {
        if (Slopes(tellingMm) is not { } slopes)
        {
            return false;
        }

        double[] before = _best.Amounts;
        double[] next = LeastOffsets.Of(slopes, Wanted(slopes), _mostMm);
        bool isExplained = ResidualMm < ExplainedMm;
        if (isExplained && Farthest(before, next) < StillMm)
        {
            return false;
        }

        // There too the shortest way may go to and fro; it is then halved until it rests.
        double share = step < FreeSteps ? 1 : Math.Pow(2, FreeSteps - step);
        return Go(before, next, isExplained ? share : 1);
    }

    /// <summary>Goes as far towards the next offsets as brings the readings nearer; false when no part of the way does.</summary>
    private bool Go(double[] from, double[] to, double share)
    {
        double off = ResidualMm;
        for (int back = 0; back < MostStepsBack; back++, share /= 2)
        {
            double[] amounts = [.. from.Zip(to, (a, b) => a + (share * (b - a)))];
            if (Try(amounts) is { } attempt && attempt.Missed.Max(Math.Abs) < Math.Max(off, ExplainedMm))
            {
                _best = attempt;
                return true;
            }
        }

        return false;
    }

    private Attempt? Try(double[] amounts)
    {
        if (_unknowns.KnifeWith(amounts) is not { } knife)
        {
            return null;
        }

        StopReadings readings = StopCheck.Run(knife, _bench, _cancellation).Readings;
        return _values.All(value => readings.At(value.Stop) is { Rests: true })
            ? new Attempt(amounts, knife, readings, Missed(readings))
            : null;
    }

    private double[] Missed(StopReadings readings) =>
        [.. _values.Select(value => value.Of(_drawn, readings) - value.Measured)];

    /// <summary>Slope of each value by each unknown; null where the knife cannot be tried about here.</summary>
    private double[][]? Slopes(double tellingMm)
    {
        double[][] slopes = [.. _values.Select(_ => new double[_unknowns.Count])];
        for (int k = 0; k < _unknowns.Count; k++)
        {
            double[] amounts = [.. _best.Amounts];
            amounts[k] += tellingMm;
            if (Try(amounts) is not { } beside)
            {
                return null;
            }

            for (int i = 0; i < slopes.Length; i++)
            {
                slopes[i][k] = (beside.Missed[i] - _best.Missed[i]) / tellingMm;
            }
        }

        return slopes;
    }

    /// <summary>What the linear values have to be with the offsets themselves, not their steps.</summary>
    private double[] Wanted(double[][] slopes) =>
        [
            .. slopes.Select(
                (slope, i) => slope.Zip(_best.Amounts, (perMm, amount) => perMm * amount).Sum() - _best.Missed[i]
            ),
        ];

    private static double Farthest(double[] a, double[] b) => a.Zip(b, (x, y) => Math.Abs(x - y)).Max();

    private static bool IsSound(Knife knife) =>
        OutlineCheck.FlawsOf(knife.Blade.Vertices.AsSpan(), GeometryTolerances.Default).IsEmpty;

    private sealed record Attempt(double[] Amounts, Knife Knife, StopReadings Readings, double[] Missed);
}
