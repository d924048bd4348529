using Flushback.Patterns;
using Flushback.Patterns.Parameters;

namespace Flushback.Reports.Tests.Fixtures;

/// <summary>Patterns as drawn: the one with nothing changed, and one too long for a sheet of Letter paper.</summary>
internal static class SamplePatterns
{
    private static readonly PatternParameters _long = PatternParameters.Default with
    {
        Handle = PatternParameters.Default.Handle with { ClosedLengthMm = 150 },
    };

    public static DrawnPattern Default { get; } = Draw(PatternParameters.Default);

    public static DrawnPattern Long { get; } = Draw(_long);

    /// <summary>With stock on blade and spring.</summary>
    public static DrawnPattern Rough { get; } =
        Draw(
            PatternParameters.Default with
            {
                Stock = new StockParameters { BladeMm = 0.25, SpringMm = 0.2 },
            }
        );

    public static DrawnPattern Draw(PatternParameters parameters)
    {
        (DrawnPattern? pattern, PatternConflict? conflict) = PatternDrawing.Make(parameters);
        Assert.True(conflict is null, conflict?.Sentence);
        return pattern!;
    }
}
