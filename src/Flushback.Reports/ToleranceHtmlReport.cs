using Flushback.Mechanism.Tolerances;
using Flushback.Reports.Page;
using Flushback.Reports.Pictures;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>A tolerance study as one self-contained page: histograms, what to tighten first, slopes.</summary>
public static class ToleranceHtmlReport
{
    /// <summary>Writes the page; the same input gives the same bytes in UTF-8.</summary>
    /// <param name="name">What the maker calls the knife; escaped, and characters that do not print are left out.</param>
    /// <param name="report">The study.</param>
    public static string Write(string name, ToleranceReport report) =>
        ToleranceTemplate.Render(
            ToleranceSheet.Of(name, report, Measure.Typeset),
            [
                .. Outcomes
                    .Readings.Where(outcome => report.SpreadOf(outcome) is not null)
                    .Select(outcome => new PictureOnPage(
                        ToleranceWords.Of(outcome),
                        Svg.Write(SpreadHistogram.Draw(report, outcome))
                    )),
            ]
        );
}
