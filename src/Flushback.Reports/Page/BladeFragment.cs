using Fluid;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Reports.Pictures;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Page;

/// <summary>One blade on the bench page, from the dial to how the drawing was read: once for a knife, twice for two blades.</summary>
internal static class BladeFragment
{
    private static readonly IFluidTemplate _template = Templates.Parse("blade.liquid");

    private static readonly TemplateOptions _options = Templates.Reading(
        typeof(ReportSheet),
        typeof(StopOnPage),
        typeof(StopRow),
        typeof(ContactRow),
        typeof(FindingRow),
        typeof(CarriedRow),
        typeof(Fact),
        typeof(HandleSheet),
        typeof(HandleStopRow),
        typeof(HandleContactRow),
        typeof(SensitivityRow),
        typeof(CaptionedPicture)
    );

    /// <summary>Writes the fragment.</summary>
    /// <param name="sheet">The report in words.</param>
    /// <param name="report">The report, the handle's findings among its own.</param>
    /// <param name="handle">The knife in its handle, when asked for.</param>
    /// <param name="prefix">What every id begins with, so that none is given twice on a page.</param>
    public static string Write(ReportSheet sheet, BenchReport report, HandleReport? handle, string prefix = "") =>
        Render(
            new BladeContent(
                prefix,
                sheet,
                [.. sheet.Stops.Zip(report.Stops, (row, reading) => OnPage(report, row, reading, prefix))],
                Svg.Write(LiftChart.Draw(report, ChartShape.Wide), prefix),
                Svg.Write(LiftChart.Draw(report, ChartShape.Narrow), prefix),
                Svg.Write(KnifePicture.Draw(report), prefix),
                handle is null ? null : HandleSheet.Of(handle, Measure.Typeset),
                handle is null ? [] : ChartsOf(handle, prefix)
            )
        );

    // Every value is escaped but the pictures, which are ours.
    private static string Render(BladeContent content)
    {
        var context = new TemplateContext(_options);
        context.SetValue("prefix", content.Prefix);
        context.SetValue("sheet", content.Sheet);
        context.SetValue("stops", content.Stops);
        context.SetValue("chart", content.Chart);
        context.SetValue("narrow_chart", content.NarrowChart);
        context.SetValue("knife", content.Knife);
        context.SetValue("handle", content.Handle);
        context.SetValue("handle_charts", content.HandleCharts);
        return _template.Render(context, Templates.Escaping).TrimEnd();
    }

    private static StopOnPage OnPage(BenchReport report, StopRow row, StopReading reading, string prefix) =>
        new(
            row,
            Svg.Write(StopPicture.Draw(report, reading.Stop), prefix),
            Svg.Write(WindowGauge.Draw(reading), prefix)
        );

    private static IReadOnlyList<CaptionedPicture> ChartsOf(HandleReport handle, string prefix) =>
        [
            .. Enum.GetValues<HandleCurve>()
                .Select(curve => new CaptionedPicture(
                    Svg.Write(HandleChart.Draw(handle, curve), prefix),
                    CaptionOf(curve)
                )),
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
