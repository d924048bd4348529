using System.Collections.Immutable;

namespace Flushback.Reports.Print;

/// <summary>How a line is drawn. Its middle is the exact line.</summary>
/// <param name="WidthMm">Width on paper, in millimetres; greater than zero.</param>
/// <param name="Colour">Its colour.</param>
public sealed record Stroke(double WidthMm, PrintColour Colour = default)
{
    /// <summary>Lengths of dash and gap by turns, in millimetres on paper; none for a line drawn through.</summary>
    public ImmutableArray<double> DashesMm { get; init; } = [];
}
