using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Reports.Page;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>The bench report as one self-contained page: style and pictures inside, no script, nothing fetched.</summary>
public static class HtmlReport
{
    /// <summary>Writes the page; the same input gives the same bytes in UTF-8.</summary>
    /// <param name="name">What the maker calls the knife; escaped, and characters that do not print are left out.</param>
    /// <param name="report">What the bench shows.</param>
    /// <param name="repairs">What was mended or left aside while the drawing was read, a sentence each.</param>
    /// <param name="handle">The knife in its handle, when asked for.</param>
    public static string Write(
        string name,
        BenchReport report,
        IReadOnlyList<string> repairs,
        HandleReport? handle = null
    )
    {
        report = HandleSheet.Together(report, handle);
        ReportSheet sheet = ReportSheet.Of(name, report, repairs, Measure.Typeset);
        return PageTemplate.Render(
            sheet.Name,
            sheet.Verdict,
            sheet.IsInOrder,
            BladeFragment.Write(sheet, report, handle)
        );
    }
}
