using System.Collections.Immutable;
using Flushback.Inspection;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>Which findings are listed one by one: thousands of short segments are one matter, and bury the others.</summary>
internal static class ListedFindings
{
    // Enough to see what is meant and where it begins.
    private const int MostOfAKind = 5;

    /// <summary>Places of the findings that are listed, in their order: the first few of each kind on each layer.</summary>
    public static IEnumerable<int> Of(ImmutableArray<InspectionFinding> findings) =>
        Kinds(findings).SelectMany(kind => kind.Take(MostOfAKind)).Order();

    /// <summary>What is left, counted in a sentence for each kind and layer.</summary>
    public static IReadOnlyList<string> RestOf(ImmutableArray<InspectionFinding> findings) =>
        [
            .. Kinds(findings)
                .Select(kind => (kind.Key, Left: kind.Count() - MostOfAKind))
                .Where(kind => kind.Left > 0)
                .Select(kind => Sentence(kind.Key.Code, kind.Key.Layer, kind.Left)),
        ];

    private static IEnumerable<IGrouping<(string Code, string Layer), int>> Kinds(
        ImmutableArray<InspectionFinding> findings
    ) => Enumerable.Range(0, findings.Length).GroupBy(i => (findings[i].Code, findings[i].Layer));

    private static string Sentence(string code, string layer, int left)
    {
        string where = layer.Length > 0 ? $" on layer {Printable.Of(layer)}" : "";
        return $"And {InspectionWords.Counted(left, "more finding")} {code}{where} that {(left == 1 ? "is" : "are")} not listed here but in the JSON.";
    }
}
