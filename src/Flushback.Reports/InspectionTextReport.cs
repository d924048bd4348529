using Flushback.Inspection;
using Flushback.Inspection.Repair;
using Flushback.Reports.Sheets;
using Flushback.Reports.Terminal;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>An inspection as plain text for a terminal: seven-bit but for names, 80 columns at most.</summary>
public static class InspectionTextReport
{
    /// <summary>Widest line, in columns.</summary>
    public const int Columns = 80;

    /// <summary>Writes the report; the same input gives the same text, lines ended by a single line feed.</summary>
    /// <param name="name">What the maker calls the drawing; characters that do not print are left out.</param>
    /// <param name="report">The inspection.</param>
    /// <param name="copy">The repaired copy; null when none was made.</param>
    public static string Write(string name, InspectionReport report, RepairedDrawing? copy = null)
    {
        InspectionSheet sheet = InspectionSheet.Of(name, report, copy, Measure.Plain);
        using var page = new TerminalPage(Columns);

        page.Heading(sheet.Name);
        page.Line(sheet.Verdict);
        page.Gap();
        page.Facts(sheet.Summary);
        WriteParts(page, sheet);
        WriteHoles(page, sheet);
        WriteFindings(page, sheet);
        WriteMore(page, sheet);
        if (copy is not null)
        {
            page.Section("Changed in the repaired copy");
            WriteList(page, sheet.Changes, "Nothing: there was nothing that can be mended without a guess.");
            if (sheet.LeftAsIs.Count > 0)
            {
                page.Section("Left as it is in the repaired copy");
                WriteList(page, sheet.LeftAsIs, "");
            }
        }

        if (sheet.Repairs.Count > 0)
        {
            page.Section("Mended or left aside while reading");
            WriteList(page, sheet.Repairs, "");
        }

        page.Section("Before you cut");
        page.Line(sheet.Caution);
        return page.ToString();
    }

    private static void WriteParts(TerminalPage page, InspectionSheet sheet)
    {
        if (sheet.Parts.Count == 0)
        {
            return;
        }

        page.Section("Parts");
        page.Table(
            ["", "layer", "holes", "", "size", "cut length", "area"],
            sheet.Parts.SelectMany(part =>
                (string[][])
                    [
                        [part.Number, part.Layer, part.Holes, "mm", part.SizeMm, part.CutMm, part.AreaMm2],
                        ["", "", "", "in", part.SizeInches, part.CutInches, part.AreaSquareInches],
                    ]
            )
        );
        if (sheet.Narrow.Count > 0)
        {
            page.Gap();
            page.Table(
                ["part", "narrowest", "mm", "thou", "where, mm"],
                sheet.Narrow.Select(row => (string[])[row.Part, row.What, row.Mm, row.Thou, row.Where])
            );
        }
    }

    private static void WriteHoles(TerminalPage page, InspectionSheet sheet)
    {
        if (sheet.Holes.Count > 0)
        {
            page.Section("Holes");
            page.Table(
                ["", "part", "at, mm", "", "hole", "pin", "fits from to", "verdict"],
                sheet.Holes.SelectMany(hole =>
                    (string[][])
                        [
                            [
                                hole.Number,
                                hole.Part,
                                $"x {hole.X}",
                                "mm",
                                hole.Mm,
                                hole.Pin,
                                hole.WindowMm,
                                $"{hole.OffMm} {hole.Verdict}".TrimStart(),
                            ],
                            ["", "", $"y {hole.Y}", "in", hole.Inches, "", hole.WindowInches, hole.OffInches],
                        ]
                )
            );
        }

        page.Gap(sheet.CutOuts.Count > 0);
        foreach (string cutOut in sheet.CutOuts)
        {
            page.Line(cutOut);
        }
    }

    private static void WriteFindings(TerminalPage page, InspectionSheet sheet)
    {
        page.Section(sheet.Findings.Count == 0 ? "Findings: none" : "Findings, worst first");
        for (int i = 0; i < sheet.Findings.Count; i++)
        {
            InspectionFindingRow finding = sheet.Findings[i];
            page.Gap(i > 0);
            page.Line($"{finding.Number}. {finding.Severity.ToUpperInvariant()}: {finding.Message}");
            page.Facts([
                .. Given("Layer", finding.Layer),
                .. Given("Entities", finding.Entities),
                .. Given("Where", finding.Place),
                .. Given("Found", finding.Found),
                new Fact("Do", finding.Advice),
            ]);
        }
    }

    private static void WriteMore(TerminalPage page, InspectionSheet sheet)
    {
        page.Gap(sheet.MoreFindings.Count > 0);
        foreach (string more in sheet.MoreFindings)
        {
            page.Line(more);
        }
    }

    private static void WriteList(TerminalPage page, IReadOnlyList<string> sentences, string otherwise)
    {
        if (sentences.Count == 0)
        {
            page.Line(otherwise);
        }

        page.Columns(sentences.Select(sentence => (string[])["-", sentence]));
    }

    private static IEnumerable<Fact> Given(string label, string? value) =>
        value is null ? [] : [new Fact(label, value)];
}
