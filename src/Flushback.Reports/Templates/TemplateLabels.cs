using System.Collections.Immutable;
using Flushback.Patterns;

namespace Flushback.Reports.Templates;

/// <summary>The words below each piece of a template: what it is, how many are cut, its holes, its stock.</summary>
internal static class TemplateLabels
{
    /// <summary>A label a piece, and the last one for the knife put together.</summary>
    public static ImmutableArray<string> Of(DrawnPattern pattern, bool inInches) =>
        [
            .. pattern.Pieces.Select(piece => LabelOf(piece, pattern, inInches)),
            pattern.SecondPieces.IsEmpty
                ? "Put together, blade open: finished outlines, for comparison."
                : "Put together, both blades open: finished outlines, for comparison.",
        ];

    private static string LabelOf(PatternPiece piece, DrawnPattern pattern, bool inInches)
    {
        string what = $"{PieceWords.Name(piece, pattern)}, {PieceWords.Cut(piece, inInches)}";
        string holes = string.Join(
            ", ",
            piece.Holes.Select(hole => $"{PinName(hole, piece)} {PieceWords.Length(hole.Circle.DiameterMm, inInches)}")
        );
        double stock =
            piece.Kind == PieceKind.Blade ? pattern.Dimensions.Stock.BladeMm : pattern.Dimensions.Stock.SpringMm;
        string left = piece.HasStock
            ? $" Dashed: finished outline, {PieceWords.Length(stock, inInches)} of stock around it."
            : "";
        string well = piece.Marks.Count(mark => mark.Kind == MarkKind.Well) switch
        {
            0 => "",
            1 => " Dotted: room of the closed blade.",
            _ => " Dotted: room of the closed blades.",
        };
        return $"{what}. Holes: {holes}.{left}{well}";
    }

    private static string PinName(PatternHole hole, PatternPiece piece)
    {
        string name = hole.Pin switch
        {
            PinKind.Pivot => "pivot",
            PinKind.Centre => "centre pin",
            _ => "rear pin",
        };
        return hole.IsSecond && !piece.IsSecond ? $"second {name}" : name;
    }
}
