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
        foreach (ItemResult result in results.Where(result => result.Outcome != ItemOutcome.Same))
        {
            text.Append(Invariant($"\n{Words.Of(result.Outcome)}: {Printable.Line(result.Path)}\n"));
            string[] sentences = [.. result.Sentences];
            foreach (string sentence in sentences.Take(MostSentences))
            {
                text.Append(Invariant($"  {Printable.Line(sentence)}\n"));
            }

            if (sentences.Length > MostSentences)
            {
                text.Append(Invariant($"  {sentences.Length - MostSentences} more are in the files of --out.\n"));
            }
        }

        return text.ToString();
    }

    private static string Invariant(FormattableString text) => FormattableString.Invariant(text);
}
