namespace Flushback.Reports.Print;

/// <summary>How words are set.</summary>
/// <param name="SizeMm">Size of the type (its em) in millimetres; 3.5 mm is about 10 points.</param>
/// <param name="IsBold">Whether they are set in bold.</param>
/// <param name="Colour">Their colour.</param>
public sealed record TextStyle(double SizeMm, bool IsBold = false, PrintColour Colour = default);

/// <summary>Which point of a line of words its place is.</summary>
public enum TextAnchor
{
    /// <summary>The left end of the base line.</summary>
    Left,

    /// <summary>The middle of the base line.</summary>
    Middle,

    /// <summary>The right end of the base line.</summary>
    Right,
}
