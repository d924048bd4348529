using Flushback.Mechanism.Bench;
using Flushback.Patterns;
using Flushback.Patterns.Pairs;
using Flushback.Patterns.Parameters;

namespace Flushback.Reports.Tests.Fixtures;

/// <summary>Two blades in one handle, drawn, by name.</summary>
internal static class SamplePairs
{
    private static readonly Dictionary<string, Lazy<DrawnPair>> _all = new()
    {
        ["shared"] = Drawn(Arrangement.SharedSpring, new()),
        ["shared-crowded"] = Drawn(Arrangement.SharedSpring, new() { FirstThicknessMm = 2.4, ThicknessMm = 2.2 }),
        // Too thick to pass side by side, too short to meet.
        ["shared-short"] = Drawn(
            Arrangement.SharedSpring,
            new()
            {
                FirstThicknessMm = 2.4,
                ThicknessMm = 2.2,
                Blade = new BladeParameters { Family = BladeFamily.Pen, LengthMm = 34 },
            },
            new()
            {
                Handle = new HandleParameters { HeightMm = 12.9 },
                Blade = new BladeParameters { Family = BladeFamily.Pen, LengthMm = 34 },
            }
        ),
        ["jack"] = Drawn(
            Arrangement.TwoSprings,
            new()
            {
                AtOtherEnd = false,
                Tang = new TangParameters { HasHalfStop = false, HeightMm = 4.6 },
                Blade = new BladeParameters { Family = BladeFamily.Pen, LengthMm = 54 },
            },
            new()
            {
                Handle = new HandleParameters { ClosedLengthMm = 94, FrontMm = 7 },
            }
        ),
        ["opposite"] = Drawn(Arrangement.TwoSprings, new() { Blade = new BladeParameters { LengthMm = 50 } }),
    };

    /// <summary>All of them.</summary>
    public static TheoryData<string> Names => [.. All];

    /// <summary>Their names.</summary>
    public static IEnumerable<string> All => _all.Keys;

    public static DrawnPair Of(string name) => _all[name].Value;

    /// <summary>Its page, what is found of both blades told with the first, as the service does.</summary>
    public static string Page(string name)
    {
        DrawnPair pair = Of(name);
        BenchReport first = pair.FirstBench with
        {
            Findings = [.. pair.FirstBench.Findings, .. pair.Clearance.Findings],
        };
        return PairHtmlReport.Write("Drover's pen", pair, first, null, pair.SecondBench, null);
    }

    private static Lazy<DrawnPair> Drawn(
        Arrangement arrangement,
        SecondBladeParameters second,
        PatternParameters? first = null
    ) =>
        new(() =>
        {
            (DrawnPair? pair, PatternConflict? conflict) = PairDrawing.Make(
                new PairParameters
                {
                    First = first ?? new(),
                    Arrangement = arrangement,
                    Second = second,
                }
            );
            Assert.True(conflict is null, conflict?.Sentence);
            return pair!;
        });
}
