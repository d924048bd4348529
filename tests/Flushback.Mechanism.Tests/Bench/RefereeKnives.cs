using System.Globalization;
using Flushback.Catalogue.Designs;

namespace Flushback.Mechanism.Tests.Bench;

/// <summary>The knives on which solver and referee are compared.</summary>
public static class RefereeKnives
{
    private const string Seed = "seed ";

    /// <summary>The catalogue and forty-two random knives.</summary>
    public static TheoryData<string> Names() =>
        [.. KnifeCatalogue.All.Select(knife => knife.Name), .. Enumerable.Range(1, 42).Select(seed => Seed + seed)];

    /// <summary>The knife of a name.</summary>
    public static KnifeDesign Find(string name) =>
        name.StartsWith(Seed, StringComparison.Ordinal)
            ? KnifeGenerator.FromSeed(int.Parse(name.AsSpan(Seed.Length), CultureInfo.InvariantCulture))
            : KnifeCatalogue.All.Single(knife => knife.Name == name);
}
