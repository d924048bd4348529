using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Patterns.Pairs;
using Flushback.Reports.Page;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>A pattern of two blades as one self-contained page: both in the handle, then each on the bench.</summary>
public static class PairHtmlReport
{
    /// <summary>Writes the page; the same input gives the same bytes in UTF-8.</summary>
    /// <param name="name">What the maker calls the knife; escaped, and characters that do not print are left out.</param>
    /// <param name="pair">Both blades.</param>
    /// <param name="first">What the bench shows of the first, with what is found of both together.</param>
    /// <param name="firstHandle">The first in its handle, when asked for.</param>
    /// <param name="second">What the bench shows of the second.</param>
    /// <param name="secondHandle">The second in its handle, when asked for.</param>
    public static string Write(
        string name,
        DrawnPair pair,
        BenchReport first,
        HandleReport? firstHandle,
        BenchReport second,
        HandleReport? secondHandle
    )
    {
        first = HandleSheet.Together(first, firstHandle);
        second = HandleSheet.Together(second, secondHandle);
        ReportSheet firstSheet = ReportSheet.Of(name, first, [], Measure.Typeset);
        ReportSheet secondSheet = ReportSheet.Of(name, second, [], Measure.Typeset);
        string body = PairFragment.Write(
            pair,
            firstSheet,
            BladeFragment.Write(firstSheet, first, firstHandle, "first-"),
            secondSheet,
            BladeFragment.Write(secondSheet, second, secondHandle, "second-")
        );
        return PageTemplate.Render(
            firstSheet.Name,
            VerdictWords.Of([first, second]),
            firstSheet.IsInOrder && secondSheet.IsInOrder,
            body,
            PairFragment.Style
        );
    }
}
