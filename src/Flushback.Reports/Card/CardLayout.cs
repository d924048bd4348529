using Flushback.Mechanism.Plans;
using Flushback.Reports.Print;

namespace Flushback.Reports.Card;

/// <summary>How tall each part of a card is, so that it fits on one sheet of A4 and one of Letter.</summary>
internal sealed record CardLayout
{
    /// <summary>Width of all that is on the card, in millimetres.</summary>
    public const double WidthMm = TangPicture.WidthMm;

    /// <summary>Height that both papers have inside their margins.</summary>
    public const double HeightMm = 262;

    /// <summary>Width of the number of a pass.</summary>
    public const double NumberMm = 8;

    /// <summary>Width of a reading to expect, and of the box to write the measured one in.</summary>
    public const double ReadingMm = 22;

    public const double TableHeadMm = 9;
    public const double LineMm = 3.5;

    public const double TitleSizeMm = 2.9;
    public const double AmountSizeMm = 2.6;
    public const double NoteSizeMm = 2.5;
    public const double NameSizeMm = 5.5;
    public const double VerdictSizeMm = 2.9;

    /// <summary>From one part to the next.</summary>
    public const double GapMm = 2.5;

    private const double LeastRowMm = 8;
    private const double LeastPictureMm = 60;

    // A browser's own type may run wider here and there.
    private const double SlackMm = 8;

    /// <summary>Lines of each row's amount.</summary>
    public required IReadOnlyList<IReadOnlyList<string>> Amounts { get; init; }

    public required IReadOnlyList<string> Verdict { get; init; }

    public required IReadOnlyList<string> Obstacles { get; init; }

    public required IReadOnlyList<string> Notes { get; init; }

    public required IReadOnlyList<string> Cautions { get; init; }

    public required TangPicture Picture { get; init; }

    /// <summary>Width of what is done in a pass.</summary>
    public required double WorkMm { get; init; }

    public double HeadMm => NameSizeMm + 4.5 + (Verdict.Count * LineMm);

    public double RowMm(int row) => Math.Max(LeastRowMm, 4.6 + (Amounts[row].Count * LineMm));

    public static CardLayout Of(CardSheet sheet, PlanReport plan)
    {
        double work = WidthMm - NumberMm - (2 * ReadingMm * sheet.Stops.Count);
        CardLayout layout = new()
        {
            WorkMm = work,
            Amounts = [.. sheet.Rows.Select(row => Lines(row.Amount, new TextStyle(AmountSizeMm), work - 3))],
            Verdict = Lines(sheet.Verdict, new TextStyle(VerdictSizeMm, IsBold: true), WidthMm),
            Obstacles =
            [
                .. sheet.Obstacles.SelectMany(sentence => Lines(sentence, new TextStyle(AmountSizeMm), WidthMm)),
            ],
            Notes = Lines(sheet.Notes, new TextStyle(NoteSizeMm), WidthMm),
            Cautions = Lines(sheet.Cautions, new TextStyle(NoteSizeMm), WidthMm),
            Picture = TangPicture.Of(plan.Simulation, LeastPictureMm),
        };
        double rest =
            HeightMm
            - SlackMm
            - layout.HeadMm
            - TableHeadMm
            - Enumerable.Range(0, sheet.Rows.Count).Sum(layout.RowMm)
            - (LineMm * (layout.Obstacles.Count + layout.Notes.Count + layout.Cautions.Count))
            - (5 * GapMm);
        double height = Math.Clamp(
            Math.Min(rest, TangPicture.WantedHeightMm(plan.Simulation)),
            LeastPictureMm,
            Math.Max(LeastPictureMm, rest)
        );
        return layout with { Picture = TangPicture.Of(plan.Simulation, height) };
    }

    private static IReadOnlyList<string> Lines(string words, TextStyle style, double widthMm) =>
        words.Length == 0 ? [] : PrintFonts.Lines(words, style, widthMm);
}
