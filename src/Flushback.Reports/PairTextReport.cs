using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Patterns.Pairs;
using Flushback.Reports.Sheets;
using Flushback.Reports.Terminal;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>The second blade of a pattern as plain text: how the blades pass each other, then what the dial reads over it.</summary>
public static class PairTextReport
{
    /// <summary>Writes the report; the same input gives the same text, lines ended by a single line feed.</summary>
    /// <param name="name">What the maker calls the knife.</param>
    /// <param name="pair">Both blades.</param>
    /// <param name="bench">What the bench shows of the second blade.</param>
    /// <param name="handle">The second blade in its handle, when asked for.</param>
    public static string Write(string name, DrawnPair pair, BenchReport bench, HandleReport? handle)
    {
        using TerminalPage page = new(TextReport.Columns);
        PairSheet sheet = PairSheet.Of(pair, Measure.Plain);
        page.Section("Blade past blade");
        page.Line(sheet.Told);
        page.Gap();
        page.Table(
            ["first blade", "second blade", "mm", "thou", "at, deg"],
            sheet.Passings.Select(row => (string[])[row.First, row.Second, row.Mm, row.Thou, row.At])
        );
        page.Gap();
        page.Line($"The second blade follows. {sheet.SecondFrame}");
        page.Gap();
        return page + "\n" + TextReport.Write($"{name}, second blade", bench, [], handle);
    }
}
