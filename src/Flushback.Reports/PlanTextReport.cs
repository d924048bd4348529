using System.Globalization;
using Flushback.Mechanism.Plans;
using Flushback.Reports.Sheets;
using Flushback.Reports.Terminal;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>A plan as plain text for a terminal: seven-bit but for names, 100 columns at most.</summary>
public static class PlanTextReport
{
    /// <summary>Writes the report; the same input gives the same text, lines ended by a single line feed.</summary>
    /// <param name="name">What the maker calls the knife; characters that do not print are left out.</param>
    /// <param name="plan">The plan, with the findings of its steps judged.</param>
    public static string Write(string name, PlanReport plan)
    {
        PlanSheet sheet = PlanSheet.Of(name, plan, Measure.Plain);
        using var page = new TerminalPage(TextReport.Columns);
        page.Heading(sheet.Name);
        page.Line(sheet.Verdict);
        WriteMeasured(page, sheet.Measured);
        WritePasses(page, sheet);
        WriteReadings(page, sheet);
        WriteObstacles(page, sheet);
        WriteEnd(page, sheet);
        WriteBalance(page, sheet);

        page.Section("Before you grind");
        page.Line(string.Join(" ", sheet.Cautions));
        return page.ToString();
    }

    private static void WriteMeasured(TerminalPage page, MeasuredFacts? measured)
    {
        if (measured is null)
        {
            return;
        }

        page.Section("Measured instead of drawn");
        page.Table(
            ["", "drawn", "measured"],
            measured.Stops.Select(row => (string[])[row.Stop, row.Drawn, row.Measured])
        );
        page.Gap();
        page.Facts(measured.Offsets);
        page.Gap();
        page.Line(measured.Remark);
    }

    private static void WritePasses(TerminalPage page, PlanSheet sheet)
    {
        if (sheet.Steps.Count == 1)
        {
            return;
        }

        page.Section("What to do, in this order");
        page.Columns(sheet.Steps.Skip(1).Select(step => (string[])[Number(step), step.Title, step.Amount]));
        page.Gap();
        page.Line(sheet.Ends);
    }

    private static void WriteReadings(TerminalPage page, PlanSheet sheet)
    {
        page.Section("Expected on the dial after each pass, in thou (and mm)");
        page.Table(
            ["", "pass", .. sheet.Stops.SelectMany(stop => (string[])[stop, "(mm)"]), "zero", "(mm)", "off, mm2"],
            sheet.Steps.Select(RowOf)
        );
        page.Gap();
        page.Line(sheet.Zeroing);
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

    private static void WriteObstacles(TerminalPage page, PlanSheet sheet)
    {
        if (sheet.Obstacles.Count == 0)
        {
            return;
        }

        page.Section("What stands in the way, and what would do it");
        for (int i = 0; i < sheet.Obstacles.Count; i++)
        {
            ObstacleRow obstacle = sheet.Obstacles[i];
            page.Gap(i > 0);
            page.Line(obstacle.Sentence);
            page.Line(obstacle.Nearest);
            foreach (string remedy in obstacle.Remedies)
            {
                page.Indented($"- {remedy}");
            }
        }
    }

    private static void WriteEnd(TerminalPage page, PlanSheet sheet)
    {
        page.Section("After the last pass");
        page.Table(
            ["", "thou", "mm", "wanted, thou", "wanted, mm", "rests at, deg", "wanted, deg"],
            sheet.Planned.Select(stop =>
                (string[])[stop.Name, stop.Thou, stop.Mm, stop.WantedThou, stop.WantedMm, stop.RestsAt, stop.Window]
            )
        );
        page.Gap(sheet.Left.Count > 0);
        foreach (string finding in sheet.Left)
        {
            page.Line($"Still to look at: {finding}");
        }
    }

    private static void WriteBalance(TerminalPage page, PlanSheet sheet)
    {
        if (sheet.Balance.Count > 0)
        {
            page.Section("Why no smaller removal does it");
            page.Facts(sheet.Balance);
        }
    }

    private static string Number(StepSheet step) => step.Number.ToString(CultureInfo.InvariantCulture);
}
