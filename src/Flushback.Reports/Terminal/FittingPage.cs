using Flushback.Patterns.Fitting;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Terminal;

/// <summary>What a fit changed on a page of dimensions, as text.</summary>
internal static class FittingPage
{
    public static void Write(TerminalPage page, FittedPattern fitted)
    {
        page.Section(
            fitted.IsReached ? "Changed on the page" : "Nearest to what is wanted (drawn is the page as it is)"
        );
        page.Line(fitted.Sentence);
        if (fitted.Changes.IsEmpty)
        {
            return;
        }

        page.Gap();
        page.Table(
            ["", "from, mm", "to, mm", "from, thou", "to, thou", "chosen or follows"],
            ChangeRow
                .Of(fitted, Measure.Plain)
                .Select(row => (string[])[row.Name, row.From, row.To, row.FromThou, row.ToThou, row.Origin])
        );
        page.Gap();
        page.Line(
            FormattableString.Invariant(
                $"The chosen changes come to {fitted.ChangePercent:0.00} percent: the root of the sum of their squares, each in percent of the range between its limits."
            )
        );
    }
}
