using Flushback.Patterns.Fitting;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>One dimension that a fit changed, in words.</summary>
/// <param name="Name">Its name.</param>
/// <param name="From">What it was: millimetres with three decimals, or degrees with their unit.</param>
/// <param name="To">What it is.</param>
/// <param name="FromThou">What it was in thousandths of an inch; empty for an angle.</param>
/// <param name="ToThou">What it is, in the same.</param>
/// <param name="Origin">Whether it was chosen or follows.</param>
internal sealed record ChangeRow(string Name, string From, string To, string FromThou, string ToThou, string Origin)
{
    private const int DegreeDecimals = 2;

    // What shows no difference in the table follows by a hair, and is left out of it.
    private const double LeastShown = 5e-4;

    /// <summary>The changes that show, those that were chosen first.</summary>
    public static IEnumerable<ChangeRow> Of(FittedPattern fitted, Measure measure) =>
        fitted
            .Changes.Where(change => change.IsFree || Math.Abs(change.To - change.From) >= LeastShown)
            .OrderBy(change => change.IsFree ? 0 : 1)
            .Select(change => Of(change, measure));

    private static ChangeRow Of(ParameterChange change, Measure measure)
    {
        string origin = change.IsFree ? "chosen" : "follows";
        return change.Limit.Unit == "mm"
            ? new ChangeRow(
                change.Limit.Name,
                measure.Mm(change.From),
                measure.Mm(change.To),
                measure.Thou(change.From),
                measure.Thou(change.To),
                origin
            )
            : new ChangeRow(change.Limit.Name, Degrees(change.From), Degrees(change.To), "", "", origin);

        string Degrees(double value) => $"{measure.Number(value, DegreeDecimals)} deg";
    }
}
