namespace Flushback.Inspection.Wording;

/// <summary>Sentences from their parts.</summary>
internal static class Sentence
{
    /// <summary>The words with a capital letter first.</summary>
    public static string Begin(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
