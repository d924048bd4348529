using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Patterns;
using Flushback.Patterns.Fitting;
using Flushback.Reports.Sheets;
using Flushback.Reports.Terminal;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>A pattern as plain text: what the dial reads on it, then the dimensions that were given and solved.</summary>
public static class PatternTextReport
{
    /// <summary>Writes the report; the same input gives the same text, lines ended by a single line feed.</summary>
    /// <param name="name">What the maker calls the knife.</param>
    /// <param name="pattern">The pattern as drawn.</param>
    /// <param name="bench">What the bench shows of it.</param>
    /// <param name="handle">The knife in its handle, when asked for.</param>
    /// <param name="fitted">What a fit of the page came to, when asked for.</param>
    public static string Write(
        string name,
        DrawnPattern pattern,
        BenchReport bench,
        HandleReport? handle = null,
        FittedPattern? fitted = null
    )
    {
        using TerminalPage page = new(TextReport.Columns);
        if (fitted is not null)
        {
            FittingPage.Write(page, fitted);
        }

        page.Section("Dimensions of the pattern");
        page.Line($"{DimensionRow.Kind(pattern.Dimensions)}.");
        page.Gap();
        IReadOnlyList<DimensionRow> rows = DimensionRow.Of(pattern, Measure.Plain);
        page.Table(
            ["", "mm", "thou", "given or solved"],
            rows.Where(row => !row.IsDefault).Select(row => (string[])[row.Name, row.Value, row.Thou, row.Origin])
        );
        page.Gap();
        page.Line(DimensionRow.Untold(rows));
        return TextReport.Write(name, bench, [], handle) + page;
    }
}
