using Flushback.Catalogue.Designs;

namespace Flushback.Handle.Tests.Solving;

/// <summary>The knives of the catalogue, and invented ones to make ten.</summary>
internal static class TenKnives
{
    private const int Count = 10;

    public static IReadOnlyList<KnifeDesign> All { get; } =
    [.. KnifeCatalogue.All, .. KnifeGenerator.First(Math.Max(0, Count - KnifeCatalogue.All.Count))];

    public static IEnumerable<int> Indices => Enumerable.Range(0, All.Count);
}
