using Flushback.Mechanism.Tolerances;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>A tolerance study in words, before it is laid out: what the terminal and the page have in common.</summary>
internal sealed record ToleranceSheet
{
    // The sampled spread may differ by this share from the one by slopes, or by so many of its standard errors, before that
    // is worth a word.
    private const double WorthAWord = 0.05;
    private const double StandardErrors = 4;

    public required string Name { get; init; }

    public required string Verdict { get; init; }

    public required IReadOnlyList<Fact> Facts { get; init; }

    public required IReadOnlyList<SpreadRow> Spreads { get; init; }

    public required string SpreadNote { get; init; }

    public required IReadOnlyList<TighteningRow> Tightenings { get; init; }

    public required string TightenFirst { get; init; }

    public required string TightenNote { get; init; }

    public required IReadOnlyList<string> SlopeHeads { get; init; }

    public required IReadOnlyList<SlopeRow> Slopes { get; init; }

    public required string SlopeNote { get; init; }

    public required IReadOnlyList<string> Remarks { get; init; }

    public required IReadOnlyList<string> Cautions { get; init; }

    public static ToleranceSheet Of(string name, ToleranceReport report, Measure measure)
    {
        Outcome[] outcomes = [.. report.Derivatives.Select(derivatives => derivatives.Of)];
        return new ToleranceSheet
        {
            Name = Printable.Or(name, "Unnamed knife"),
            Verdict = VerdictOf(report, measure),
            Facts = [.. FactsOf(report, measure)],
            Spreads = [.. report.Spreads.SelectMany(spread => SpreadRow.AllOf(spread, measure))],
            SpreadNote =
                "Low and high hold 95 of a hundred parts between them; in is the share in the window of the reading. Open stands how"
                + " high the back lies against the drawing: the dial is set to zero there, so that only the half stop and closed"
                + " have a window. By slopes stands the standard deviation by the law of propagation (JCGM 100:2008, 5.1.2).",
            Tightenings =
            [
                .. report.Tightenings.Select((tightening, i) => TighteningRow.Of(i + 1, report, tightening, measure)),
            ],
            TightenFirst = TightenFirstOf(report, measure),
            TightenNote =
                "Under half stop and closed stands a tolerance's share of the variance; under halved the parts within targets with"
                + " this one tolerance halved, by slopes.",
            SlopeHeads = [.. outcomes.Select(HeadOf)],
            Slopes =
            [
                .. Enumerable
                    .Range(0, report.List.Dimensions.Length)
                    .Select(index => SlopeRow.Of(report, index, outcomes, measure)),
            ],
            SlopeNote =
                "Heights and readings in mm for a mm, which is thou for a thou; angles, pull and stress for 0.1 mm (3.9 thou)."
                + " Offset is all of a face out of the metal; tilt is out at its front end and in at its rear, front being"
                + " towards the blade as opened, on the shoulder and the end face the upper end.",
            Remarks = [.. RemarksOf(report, measure)],
            Cautions = Sheets.Cautions.All,
        };
    }

    private static string VerdictOf(ToleranceReport report, Measure measure) =>
        $"{SpreadRow.Percent(report.Within.Share, measure)} percent of {Count(report.Counts.All, measure)} parts read within their targets"
        + $" (between {SpreadRow.Percent(report.Within.Low, measure)} and {SpreadRow.Percent(report.Within.High, measure)} percent, 95 percent sure).";

    private static IEnumerable<Fact> FactsOf(ToleranceReport report, Measure measure)
    {
        yield return new Fact("spread", ToleranceWords.Of(report.Settings.Distribution));
        yield return new Fact(
            "parts",
            FormattableString.Invariant($"{Count(report.Counts.All, measure)}, seed {report.Settings.Seed}")
        );
        yield return new Fact("do not go together", Count(report.Counts.NotAssembled, measure));
        yield return new Fact("no rest open", Count(report.Counts.NoRestOpen, measure));
        if (report.AsDrawn.HalfStop is not null)
        {
            yield return new Fact("no rest at the half stop", Count(report.Counts.NoRestHalfStop, measure));
        }

        yield return new Fact("no rest closed", Count(report.Counts.NoRestClosed, measure));
    }

    private static string TightenFirstOf(ToleranceReport report, Measure measure)
    {
        Tightening first = report.Tightenings[0];
        string named = ToleranceWords.Of(report.List.Tolerances[first.Tolerance]);
        return first.WithinIfHalved.Share > report.Within.Share
            ? $"Tighten the {named} first: half of it brings {SpreadRow.Percent(first.WithinIfHalved.Share, measure)} percent of the parts within their targets."
            : $"No tolerance brings more parts within their targets when it is halved; the {named} has the largest share in the readings.";
    }

    private static IEnumerable<string> RemarksOf(ToleranceReport report, Measure measure)
    {
        string[] differenced =
        [
            .. report
                .Derivatives.Where(d => !d.IsExact && !Outcomes.OfHandle.Contains(d.Of))
                .Select(d => ToleranceWords.Of(d.Of)),
        ];
        if (differenced.Length > 0)
        {
            yield return $"A single contact holds the blade, so the slopes of these are differences of parts really solved: {string.Join("; ", differenced)}.";
        }

        string[] bent =
        [
            .. report
                .Spreads.Where(spread => Outcomes.Readings.Contains(spread.Of) && DiffersFromSlopes(spread))
                .Select(spread => ToleranceWords.Of(spread.Of)),
        ];
        if (bent.Length > 0)
        {
            yield return $"Slopes do not tell the whole spread of these, since contacts change within the tolerances; go by the parts solved: {string.Join("; ", bent)}.";
        }

        if (report.Bent is { } comparison)
        {
            yield return $"Pull and stress are those as drawn and what the deviations add by slopes, which are differences of springs really bent. {Count(comparison.Count, measure)} parts were bent too: their pull lies within {measure.Number(comparison.PullDifferenceN, 2)} N of that, their stress within {measure.Number(comparison.StressDifferenceMpa, 1)} MPa.";
            if (comparison.Stuck > 0)
            {
                yield return $"The blade of {Count(comparison.Stuck, measure)} of them cannot be turned.";
            }
        }
    }

    // A standard deviation of n parts has a standard error of itself over the root of 2 n.
    private static bool DiffersFromSlopes(Spread spread) =>
        Math.Abs(spread.Deviation - spread.LinearDeviation)
        > Math.Max(WorthAWord, StandardErrors / Math.Sqrt(2 * spread.Count)) * spread.LinearDeviation;

    private static string HeadOf(Outcome outcome) =>
        outcome switch
        {
            Outcome.OpenHeight => "open",
            Outcome.HalfStopLift => "half stop",
            Outcome.ClosedLift => "closed",
            Outcome.OpenAngle => "open, deg",
            Outcome.HalfStopAngle => "half, deg",
            Outcome.ClosedAngle => "closed, deg",
            Outcome.TipDepth => "tip",
            Outcome.Pull => "pull, N",
            _ => "stress, MPa",
        };

    private static string Count(int count, Measure measure)
    {
        string digits = measure.Number(count, 0);
        return digits.Length > 3 ? $"{digits[..^3]},{digits[^3..]}" : digits;
    }
}
