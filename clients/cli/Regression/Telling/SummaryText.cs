using System.Text;
using Flushback.Cli.Output;
using Flushback.Cli.Regression.Running;

namespace Flushback.Cli.Regression.Telling;

/// <summary>The results as text: how many of each outcome, then what is not as before, file by file.</summary>
internal static class SummaryText
{
    private const int MostSentences = 12;

    /// <summary>Writes it; the same results give the same bytes.</summary>
    public static string Write(IReadOnlyList<ItemResult> results)
    {
        StringBuilder text = new();
        foreach (ItemOutcome outcome in Words.Outcomes)
        {
            text.Append(Invariant($"  {Words.Of(outcome), -8}{Words.Count(results, outcome), 7:N0}\n"));
        }

        text.Append(Invariant($"  {"all", -8}{results.Count, 7:N0}\n"));
        foreach (ItemOutcome outcome in Words.Outcomes.Where(outcome => outcome != ItemOutcome.Same))
        {
            ItemResult[] those = [.. results.Where(result => result.Outcome == outcome)];
            if (those.Length > 0)
            {
                text.Append(Invariant($"\n{Words.Heading(outcome)}\n"));
                Array.ForEach(those, result => Append(text, result));
            }
        }

        return text.ToString();
    }

    private static void Append(StringBuilder text, ItemResult result)
    {
        text.Append(Invariant($"  {Printable.Line(result.Path)}\n"));
        string[] sentences = [.. result.Changes.Select(change => change.Sentence), .. result.Errors];
        foreach (string sentence in sentences.Take(MostSentences))
        {
            text.Append(Invariant($"    {Printable.Line(sentence)}\n"));
        }

        if (sentences.Length > MostSentences)
        {
            text.Append(Invariant($"    {sentences.Length - MostSentences} more are in the files of --out.\n"));
        }
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
