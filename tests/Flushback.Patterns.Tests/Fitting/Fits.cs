using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Fitting;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Tests.Fitting;

/// <summary>Pages fitted, and read again, for a test.</summary>
internal static class Fits
{
    /// <summary>A fit for a pull by the spring.</summary>
    public static FitSettings For(double pullN, double? mostStressMpa, params ImmutableArray<string> free) =>
        new()
        {
            Free = free.IsDefaultOrEmpty ? FitSettings.SpringPaths : free,
            WantedPullN = pullN,
            MostStressMpa = mostStressMpa,
            Bench = BenchOf,
            Handle = HandleOf,
        };

    /// <summary>A fit that takes every finding away.</summary>
    public static FitSettings ForNoFindings(bool inHandle, params ImmutableArray<string> free) =>
        new()
        {
            Free = free,
            WantsNoFindings = true,
            Bench = BenchOf,
            Handle = inHandle ? HandleOf : null,
        };

    /// <summary>Paths of what a page leaves out and a fit may change unnamed.</summary>
    public static ImmutableArray<string> LeftOutOf(PatternParameters page) =>
        [
            .. PatternLimits
                .All.Where(limit => limit.Read(page) is null && FitSettings.IsFreeUnnamed(limit))
                .Select(limit => limit.Path),
        ];

    /// <summary>The page drawn anew and handed in as a maker hands in a drawing, its faces found from the outlines alone.</summary>
    public static (BenchReport Bench, HandleReport Handle) Read(PatternParameters page)
    {
        DrawnPattern pattern = Tests.Bench.Make(page);
        (Placement? placement, ImmutableArray<KnifeProblem> problems) = KnifePlacement.Place(pattern.ToDrawn());
        Assert.Empty(problems);
        BenchReport bench = BenchCheck.Run(placement!, BenchOf(pattern.Dimensions));
        (HandleReport? handle, problems) = HandleCheck.Run(bench, HandleOf(pattern.Dimensions));
        Assert.Empty(problems);
        return (bench, handle!);
    }

    public static BenchSettings BenchOf(PatternParameters dimensions) =>
        new() { Targets = DrawnPattern.TargetsOf(dimensions) };

    public static HandleSettings HandleOf(PatternParameters dimensions) =>
        new()
        {
            WidthMm = dimensions.Spring.WidthMm,
            PreloadMm = dimensions.Spring.PreloadMm!.Value,
            NailNickMm = dimensions.Blade.NickPlaceMm,
        };
}
