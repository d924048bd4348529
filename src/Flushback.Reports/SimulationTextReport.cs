using System.Globalization;
using Flushback.Mechanism.Passes;
using Flushback.Reports.Sheets;
using Flushback.Reports.Terminal;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>A simulation as plain text for a terminal: seven-bit but for names, 100 columns at most.</summary>
public static class SimulationTextReport
{
    /// <summary>Writes the report; the same input gives the same text, lines ended by a single line feed.</summary>
    /// <param name="name">What the maker calls the knife; characters that do not print are left out.</param>
    /// <param name="simulation">The simulation, with its findings judged.</param>
    public static string Write(string name, Simulation simulation)
    {
        SimulationSheet sheet = SimulationSheet.Of(name, simulation, Measure.Plain);
        using var page = new TerminalPage(TextReport.Columns);
        page.Heading(sheet.Name);
        page.Line(sheet.Verdict);

        page.Section("Dial readings after each pass, in thou (and mm)");
        page.Table(
            ["", "pass", .. sheet.Stops.SelectMany(stop => (string[])[stop, "(mm)"]), "zero", "(mm)", "off, mm2"],
            sheet.Steps.Select(RowOf)
        );
        page.Gap();
        page.Line(sheet.Zeroing);

        foreach (StepSheet step in sheet.Steps)
        {
            WriteStep(page, step);
        }

        page.Section("Before you grind");
        page.Line(string.Join(" ", sheet.Cautions));
        return page.ToString();
    }

    private static string[] RowOf(StepSheet step) =>
        [
            step.Number == 0 ? "" : Number(step),
            step.Title,
            .. step.Stops.Skip(1).SelectMany(stop => (string[])[stop.Thou, $"({stop.Mm})"]),
            step.ZeroThou,
            step.ZeroMm.Length == 0 ? "" : $"({step.ZeroMm})",
            step.AreaMm2,
        ];

    private static void WriteStep(TerminalPage page, StepSheet step)
    {
        page.Section(step.Number == 0 ? "As drawn" : $"Pass {Number(step)}: {step.Title}, {step.Amount}");
        page.Table(
            ["", "thou", "mm", "not zeroed again, mm", "rests at, deg", "verdict"],
            step.Stops.Select(stop => (string[])[stop.Name, stop.Thou, stop.Mm, stop.RawMm, stop.RestsAt, stop.Verdict])
        );
        page.Gap();
        page.Facts([
            .. step.Stops.Select(stop => new Fact($"touches, {stop.Name}", stop.Contacts)),
            .. step.Depths,
            .. step.Settled.Select(finding => new Fact("settled", finding)),
            .. step.New.Select(finding => new Fact("new", finding)),
            .. step.Cautions.Select(caution => new Fact("mind", caution)),
        ]);
    }

    private static string Number(StepSheet step) => step.Number.ToString(CultureInfo.InvariantCulture);
}
