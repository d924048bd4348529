using Flushback.Inspection;
using Flushback.Inspection.Repair;
using Flushback.Reports.Page;
using Flushback.Reports.Pictures;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>An inspection as one self-contained page: style and picture inside, no script, nothing fetched.</summary>
public static class InspectionHtmlReport
{
    /// <summary>Writes the page; the same input gives the same bytes in UTF-8.</summary>
    /// <param name="name">What the maker calls the drawing; escaped, and characters that do not print are left out.</param>
    /// <param name="report">The inspection.</param>
    /// <param name="copy">The repaired copy; null when none was made.</param>
    public static string Write(string name, InspectionReport report, RepairedDrawing? copy = null) =>
        InspectionTemplate.Render(
            InspectionSheet.Of(name, report, copy, Measure.Typeset),
            PictureOf(report, isNarrow: false),
            PictureOf(report, isNarrow: true)
        );

    private static string? PictureOf(InspectionReport report, bool isNarrow) =>
        PartsPicture.Draw(report, isNarrow) is { } picture ? Svg.Write(picture) : null;
}
