using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Tests;

/// <summary>The page with nothing changed but family and tang.</summary>
public sealed class DefaultPatternTests
{
    public static TheoryData<BladeFamily, bool> Families
    {
        get
        {
            TheoryData<BladeFamily, bool> families = [];
            foreach (BladeFamily family in Enum.GetValues<BladeFamily>())
            {
                families.Add(family, true);
                families.Add(family, false);
            }

            return families;
        }
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void Nothing_is_found_on_the_bench(BladeFamily family, bool hasHalfStop)
    {
        DrawnPattern pattern = Bench.Make(Page(family, hasHalfStop));

        (Placement? placement, var problems) = KnifePlacement.Place(pattern.ToDrawn());
        Assert.Empty(problems);
        BenchReport report = BenchCheck.Run(placement!, new BenchSettings());

        Assert.Empty(report.Findings);
        Assert.All(report.Stops, stop => Assert.Equal(2, stop.Contacts.Length));
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void In_the_handle_nothing_is_found_either(BladeFamily family, bool hasHalfStop)
    {
        DrawnPattern pattern = Bench.Make(Page(family, hasHalfStop));
        HandleSettings settings = new()
        {
            WidthMm = pattern.Dimensions.Spring.WidthMm,
            PreloadMm = pattern.Dimensions.Spring.PreloadMm!.Value,
            NailNickMm = pattern.Dimensions.Blade.NickPlaceMm,
        };

        (HandleReport? report, var problems) = HandleCheck.Run(Bench.Read(pattern), settings);

        Assert.Empty(problems);
        Assert.Empty(report!.Findings.Select(finding => finding.Message));
    }

    [Theory]
    [MemberData(nameof(Families))]
    public void What_was_left_out_can_be_written_in_and_gives_the_same_knife(BladeFamily family, bool hasHalfStop)
    {
        DrawnPattern pattern = Bench.Make(Page(family, hasHalfStop));

        DrawnPattern again = Bench.Make(pattern.Dimensions);

        foreach ((PatternPiece before, PatternPiece after) in pattern.Pieces.Zip(again.Pieces))
        {
            Assert.Equal(before.Finished.Edges.Length, after.Finished.Edges.Length);
            foreach ((Edge one, Edge other) in before.Finished.Edges.Zip(after.Finished.Edges))
            {
                Assert.True(one.Start.IsWithin(1e-9, other.Start), $"{one} became {other}");
            }
        }
    }

    private static PatternParameters Page(BladeFamily family, bool hasHalfStop)
    {
        PatternParameters page = PatternParameters.Default;
        return page with
        {
            Blade = page.Blade with { Family = family },
            Tang = page.Tang with { HasHalfStop = hasHalfStop },
        };
    }
}
