using System.Globalization;
using Flushback.Mechanism.Tolerances;
using Flushback.Reports.Sheets;
using Flushback.Reports.Terminal;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>A tolerance study as plain text for a terminal: seven-bit but for names, 100 columns at most.</summary>
public static class ToleranceTextReport
{
    // So many columns of slopes stand beside the names of the dimensions.
    private const int SlopesAside = 5;

    /// <summary>Writes the report; the same input gives the same text, lines ended by a single line feed.</summary>
    /// <param name="name">What the maker calls the knife; characters that do not print are left out.</param>
    /// <param name="report">The study.</param>
    public static string Write(string name, ToleranceReport report)
    {
        ToleranceSheet sheet = ToleranceSheet.Of(name, report, Measure.Plain);
        using var page = new TerminalPage(TextReport.Columns);
        page.Heading(sheet.Name);
        page.Line(sheet.Verdict);
        page.Gap();
        page.Facts(sheet.Facts);

        page.Section("How the parts are spread");
        page.Table(
            ["", "", "as drawn", "mean", "std dev", "low", "high", "by slopes", "in, %"],
            sheet.Spreads.Select(row =>
                (string[])
                    [
                        row.IsFirst ? row.Outcome : "",
                        row.Unit,
                        row.AsDrawn,
                        row.Mean,
                        row.Deviation,
                        row.Low,
                        row.High,
                        row.Linear,
                        row.Within,
                    ]
            )
        );
        page.Gap();
        page.Line(sheet.SpreadNote);

        page.Section("What to tighten first");
        page.Line(sheet.TightenFirst);
        page.Gap();
        page.Table(
            ["", "tolerance", "thou", "mm", "half stop, %", "closed, %", "halved, %", "gain, %"],
            sheet.Tightenings.Select(row =>
                (string[])
                    [
                        row.Number.ToString(CultureInfo.InvariantCulture),
                        row.Tolerance,
                        row.Thou,
                        row.Mm,
                        row.HalfStop,
                        row.Closed,
                        row.Within,
                        row.Gain,
                    ]
            )
        );
        page.Gap();
        page.Line(sheet.TightenNote);

        page.Section("Slopes");
        for (int first = 0; first < sheet.SlopeHeads.Count; first += SlopesAside)
        {
            page.Table(
                ["", .. sheet.SlopeHeads.Skip(first).Take(SlopesAside)],
                sheet.Slopes.Select(row => (string[])[row.Dimension, .. row.Slopes.Skip(first).Take(SlopesAside)])
            );
            page.Gap();
        }

        page.Line(sheet.SlopeNote);
        foreach (string remark in sheet.Remarks)
        {
            page.Gap();
            page.Line(remark);
        }

        page.Section("Before you grind");
        page.Line(string.Join(" ", sheet.Cautions));
        return page.ToString();
    }
}
