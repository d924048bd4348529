using Flushback.Patterns;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Templates;

/// <summary>What a piece is called on a drawing for the shop, how many of it are cut, and from which stock.</summary>
public static class PieceWords
{
    /// <summary>Its layer, and in lower case its id: <c>BLADE</c>, <c>SPRING_2</c>.</summary>
    public static string Layer(PatternPiece piece)
    {
        string name = piece.Kind switch
        {
            PieceKind.Blade => "BLADE",
            PieceKind.Spring => "SPRING",
            PieceKind.LinerBetween => "LINER_BETWEEN",
            _ => "HANDLE",
        };
        return piece.IsSecond ? $"{name}_2" : name;
    }

    /// <summary>Its name at the head of a sentence: <c>Second blade</c>. It is numbered only where there are two.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="pattern">The pattern it belongs to.</param>
    public static string Name(PatternPiece piece, DrawnPattern pattern)
    {
        bool isOneOfTwo = pattern.Pieces.Count(other => other.Kind == piece.Kind) > 1;
        string which = piece.IsSecond ? "second" : "first";
        return (piece.Kind, isOneOfTwo) switch
        {
            (PieceKind.Blade, true) => $"{Capital(which)} blade",
            (PieceKind.Blade, false) => "Blade",
            (PieceKind.Spring, true) => $"{Capital(which)} spring",
            (PieceKind.Spring, false) => "Spring",
            (PieceKind.LinerBetween, _) => "Liner between the springs",
            (_, true) => $"Liner or scale on the {which} blade's side",
            _ => "Liner or scale",
        };
    }

    /// <summary>How many are cut, and how thick: <c>cut one, 3.20 mm thick</c>.</summary>
    /// <param name="piece">The piece.</param>
    /// <param name="inInches">Whether the thickness is told in inches; in millimetres otherwise.</param>
    public static string Cut(PatternPiece piece, bool inInches)
    {
        string count = piece.Count switch
        {
            1 => "cut one",
            2 => "cut two",
            _ => FormattableString.Invariant($"cut {piece.Count}"),
        };
        return piece.ThicknessMm is { } thickness ? $"{count}, {Length(thickness, inInches)} thick" : count;
    }

    /// <summary>A length on a drawing: <c>3.20 mm</c>, <c>0.1260 in</c>.</summary>
    public static string Length(double mm, bool inInches) =>
        inInches ? $"{Measure.Typeset.Inches(mm, 4)} in" : $"{Measure.Typeset.Mm(mm, 2)} mm";

    private static string Capital(string word) => char.ToUpperInvariant(word[0]) + word[1..];
}
