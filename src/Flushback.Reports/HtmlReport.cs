using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Reports.Page;
using Flushback.Reports.Pictures;
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
            new PageContent(
                sheet,
                [.. sheet.Stops.Zip(report.Stops, (row, reading) => OnPage(report, row, reading))],
                Svg.Write(LiftChart.Draw(report, ChartShape.Wide)),
                Svg.Write(LiftChart.Draw(report, ChartShape.Narrow)),
                Svg.Write(KnifePicture.Draw(report)),
                handle is null ? null : HandleSheet.Of(handle, Measure.Typeset),
                handle is null ? [] : ChartsOf(handle)
            )
        );
    }

    private static StopOnPage OnPage(BenchReport report, StopRow row, StopReading reading) =>
        new(row, Svg.Write(StopPicture.Draw(report, reading.Stop)), Svg.Write(WindowGauge.Draw(reading)));

    private static IReadOnlyList<ChartOnPage> ChartsOf(HandleReport handle) =>
        [
            .. Enum.GetValues<HandleCurve>()
                .Select(curve => new ChartOnPage(Svg.Write(HandleChart.Draw(handle, curve)), CaptionOf(curve))),
        ];

    private static string CaptionOf(HandleCurve curve) =>
        curve switch
        {
            HandleCurve.Lift => "Dots: where the blade rests in the handle.",
            HandleCurve.Torque =>
                "Above zero the hand turns the blade towards closed, below zero towards open. What lies between the lines is"
                    + " lost to friction.",
            HandleCurve.Energy => "Downhill the spring drives the blade, where friction lets it.",
            _ =>
                "In the net section at the pins' holes, at the rest when open and where the rotation stresses it most.",
        };
}
