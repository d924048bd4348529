using System.Collections.Immutable;
using Flushback.Patterns;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Templates;

/// <summary>The words below each piece of a template: what it is, its holes, its stock.</summary>
internal static class TemplateLabels
{
    /// <summary>A label a piece, and the last one for the knife put together.</summary>
    public static ImmutableArray<string> Of(DrawnPattern pattern, bool inInches)
    {
        Func<double, string> length = inInches
            ? mm => $"{Measure.Typeset.Inches(mm, 4)} in"
            : mm => $"{Measure.Typeset.Mm(mm, 2)} mm";
        return
        [
            .. pattern.Pieces.Select(piece => LabelOf(piece, pattern, length)),
            "Put together, blade open: finished outlines, for comparison.",
        ];
    }

    private static string LabelOf(PatternPiece piece, DrawnPattern pattern, Func<double, string> length)
    {
        string what = piece.Kind == PieceKind.Handle ? "Liner or scale, cut two" : PieceName(piece.Kind);
        string holes = string.Join(
            ", ",
            piece.Holes.Select(hole => $"{PinName(hole.Pin)} {length(hole.Circle.DiameterMm)}")
        );
        double stock =
            piece.Kind == PieceKind.Blade ? pattern.Dimensions.Stock.BladeMm : pattern.Dimensions.Stock.SpringMm;
        string left = piece.HasStock ? $" Dashed: finished outline, {length(stock)} of stock around it." : "";
        string well = piece.Marks.Any(mark => mark.Kind == MarkKind.Well) ? " Dotted: room of the closed blade." : "";
        return $"{what}. Holes: {holes}.{left}{well}";
    }

    /// <summary>A piece in a sentence.</summary>
    public static string PieceName(PieceKind kind) =>
        kind switch
        {
            PieceKind.Blade => "Blade",
            PieceKind.Spring => "Spring",
            _ => "Handle",
        };

    private static string PinName(PinKind pin) =>
        pin switch
        {
            PinKind.Pivot => "pivot",
            PinKind.Centre => "centre pin",
            _ => "rear pin",
        };
}
