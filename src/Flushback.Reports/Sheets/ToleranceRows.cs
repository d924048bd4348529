using Flushback.Geometry;
using Flushback.Mechanism.Tolerances;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>How an outcome is spread, in words and one unit.</summary>
internal sealed record SpreadRow(
    bool IsFirst,
    string Outcome,
    string Unit,
    string AsDrawn,
    string Mean,
    string Deviation,
    string Low,
    string High,
    string Linear,
    string Within
)
{
    private const double NewtonsPerPound = 0.45359237 * 9.80665;

    /// <summary>A row a unit: lengths in thousandths and millimetres, forces in newtons and pounds.</summary>
    public static IEnumerable<SpreadRow> AllOf(Spread spread, Measure measure)
    {
        (string Unit, double Each, int Decimals)[] units = spread.Of switch
        {
            Mechanism.Tolerances.Outcome.Pull => [("N", 1, 2), ("lbf", NewtonsPerPound, 2)],
            Mechanism.Tolerances.Outcome.PeakStress => [("MPa", 1, 0)],
            _ when spread.Of.IsAngle() => [("deg", 1 / Angle.DegreesPerRadian, 2)],
            _ => [("thou", Measure.MmPerThou, 1), ("mm", 1, 3)],
        };
        bool isFirst = true;
        foreach ((string unit, double each, int decimals) in units)
        {
            yield return new SpreadRow(
                isFirst,
                ToleranceWords.Of(spread.Of),
                unit,
                Number(spread.AsDrawn),
                Number(spread.Mean),
                Number(spread.Deviation),
                Number(spread.Percentiles[0]),
                Number(spread.Percentiles[^1]),
                Number(spread.LinearDeviation),
                isFirst && spread.Within is { } within ? Percent(within.Share, measure) : ""
            );
            isFirst = false;

            string Number(double value) => double.IsFinite(value) ? measure.Number(value / each, decimals) : "none";
        }
    }

    /// <summary>A share in percent, without its sign.</summary>
    public static string Percent(double share, Measure measure) => measure.Number(share * 100, 1);
}

/// <summary>A tolerance and what tightening it would bring, in words.</summary>
internal sealed record TighteningRow(
    int Number,
    string Tolerance,
    string Thou,
    string Mm,
    string HalfStop,
    string Closed,
    string Within,
    string Gain
)
{
    public static TighteningRow Of(int number, ToleranceReport report, Tightening tightening, Measure measure)
    {
        Tolerance tolerance = report.List.Tolerances[tightening.Tolerance];
        string sides = ToleranceWords.Sides(tolerance, measure);
        return new TighteningRow(
            number,
            ToleranceWords.Of(tolerance),
            sides + measure.Thou(tolerance.Mm),
            sides + measure.Mm(tolerance.Mm),
            ShareOf(Outcome.HalfStopLift),
            ShareOf(Outcome.ClosedLift),
            SpreadRow.Percent(tightening.WithinIfHalved.Share, measure),
            measure.Change((tightening.WithinIfHalved.Share - report.Within.Share) * 100, 1)
        );

        string ShareOf(Outcome outcome)
        {
            int index = report.Derivatives.ToList().FindIndex(derivatives => derivatives.Of == outcome);
            return index < 0 ? "" : SpreadRow.Percent(tightening.VarianceShares[index], measure);
        }
    }
}

/// <summary>What a dimension does to the outcomes, in words.</summary>
internal sealed record SlopeRow(string Dimension, IReadOnlyList<string> Slopes)
{
    // What is told for a millimetre of a length, and for a tenth of it of everything else.
    private const double TenthMm = 0.1;

    public static SlopeRow Of(ToleranceReport report, int index, IEnumerable<Outcome> outcomes, Measure measure)
    {
        Dimension dimension = report.List.Dimensions[index];
        return new SlopeRow(
            ToleranceWords.Of(report.List.Of(dimension), dimension.Deviation),
            [
                .. outcomes.Select(outcome =>
                {
                    double slope = report.Derivatives.First(derivatives => derivatives.Of == outcome).PerMm[index];
                    return outcome switch
                    {
                        Outcome.Pull => measure.Change(slope * TenthMm, 2),
                        Outcome.PeakStress => measure.Change(slope * TenthMm, 1),
                        _ when outcome.IsAngle() => measure.Change(new Angle(slope * TenthMm).Degrees, 2),
                        _ => measure.Change(slope, 2),
                    };
                }),
            ]
        );
    }
}
