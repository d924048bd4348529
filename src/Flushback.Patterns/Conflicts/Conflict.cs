namespace Flushback.Patterns.Conflicts;

/// <summary>Makes conflicts.</summary>
internal static class Conflict
{
    /// <summary>A conflict of the parameters at some paths.</summary>
    public static PatternConflict Of(string sentence, params ReadOnlySpan<string> paths) => new(sentence, [.. paths]);
}
