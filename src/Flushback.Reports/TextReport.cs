using System.Globalization;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Reports.Sheets;
using Flushback.Reports.Terminal;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>The bench report as plain text for a terminal: seven-bit but for names, 100 columns at most.</summary>
public static class TextReport
{
    /// <summary>Widest line, in columns.</summary>
    public const int Columns = 100;

    /// <summary>Writes the report; the same input gives the same text, lines ended by a single line feed.</summary>
    /// <param name="name">What the maker calls the knife; characters that do not print are left out.</param>
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
        ReportSheet sheet = ReportSheet.Of(name, report, repairs, Measure.Plain);
        using var page = new TerminalPage(Columns);

        page.Heading(sheet.Name);
        page.Line(sheet.Verdict);

        page.Section("Dial readings");
        page.Table(
            ["", "thou", "mm", "window, thou", "window, mm", "rests at, deg", "verdict"],
            sheet.Stops.Select(stop =>
                (string[])
                    [
                        stop.Name,
                        stop.Thou,
                        stop.Mm,
                        stop.WindowThou,
                        stop.WindowMm,
                        $"{stop.RestsAt} ({stop.Nominal})",
                        stop.Verdict,
                    ]
            )
        );
        page.Gap();
        page.Line(sheet.Zeroing);
        page.Line(sheet.NoHalfStop);

        page.Section("Contacts, places in mm in the drawing with the blade turned to the stop");
        for (int i = 0; i < sheet.Stops.Count; i++)
        {
            StopRow stop = sheet.Stops[i];
            page.Gap(i > 0);
            page.Line(Sentence(stop.Name) + ": " + stop.Standing);
            page.Columns(
                stop.Contacts.Select(contact =>
                    (string[])
                        [
                            contact.Number.ToString(CultureInfo.InvariantCulture),
                            contact.Pair,
                            contact.Touches,
                            $"x {contact.X}",
                            $"y {contact.Y}",
                        ]
                )
            );
            foreach (string remark in stop.Remarks)
            {
                page.Indented(remark);
            }
        }

        page.Section("Lift, gaps and clearances");
        page.Facts(sheet.Clearances);

        if (handle is not null)
        {
            HandlePage.Write(page, HandleSheet.Of(handle, Measure.Plain));
        }

        page.Section(sheet.Findings.Count == 0 ? "Findings: none" : "Findings, worst first");
        for (int i = 0; i < sheet.Findings.Count; i++)
        {
            FindingRow finding = sheet.Findings[i];
            page.Gap(i > 0);
            page.Line($"{finding.Severity.ToUpperInvariant()}: {finding.Message}");
            page.Facts([
                .. Given("Where", finding.Place),
                .. Given("Found", finding.Found),
                new Fact("Do", finding.Advice),
            ]);
        }

        page.Section("How the drawing was read");
        page.Facts([.. sheet.Drawing, .. sheet.Repairs.Select(repair => new Fact("Mended or left aside", repair))]);

        page.Section("Before you grind");
        page.Line(string.Join(" ", sheet.Cautions));
        return page.ToString();
    }

    private static IEnumerable<Fact> Given(string label, string? value) =>
        value is null ? [] : [new Fact(label, value)];

    private static string Sentence(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
