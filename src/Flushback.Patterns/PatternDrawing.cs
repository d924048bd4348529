using Flushback.Patterns.Parameters;

namespace Flushback.Patterns;

/// <summary>Draws a knife from a page of dimensions.</summary>
public static class PatternDrawing
{
    /// <summary>Draws the pattern so that the dial reads what is wanted at every true rest.</summary>
    /// <param name="parameters">The page of dimensions.</param>
    /// <param name="cancellation">Looked at once a pose of the spring.</param>
    /// <returns>The pattern, or which parameters are in conflict; exactly one of the two.</returns>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static (DrawnPattern? Pattern, PatternConflict? Conflict) Make(
        PatternParameters parameters,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(parameters);
        cancellation.ThrowIfCancellationRequested();
        return PatternLimits.Violations(parameters).FirstOrDefault() is { } outside
            ? (null, outside)
            : (null, new PatternConflict("Patterns are not drawn yet.", []));
    }
}
