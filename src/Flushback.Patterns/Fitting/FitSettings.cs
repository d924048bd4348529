using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Fitting;

/// <summary>What a fit is after, and what it may change. Immutable.</summary>
public sealed record FitSettings
{
    /// <summary>The dimensions of the spring that a wanted pull is had by, unless others are named.</summary>
    public static ImmutableArray<string> SpringPaths { get; } =
    [
        "spring.nose_depth_mm",
        "spring.centre_depth_mm",
        "spring.rear_depth_mm",
        "pins.centre_behind_mm",
        "spring.preload_mm",
    ];

    /// <summary>
    /// True for a number that is free without being named when a page leaves it out: no reading, stock or clearance that is
    /// wanted, and nothing that comes in sizes of the trade.
    /// </summary>
    public static bool IsFreeUnnamed(PatternLimit limit) =>
        limit.Group is not ("readings" or "stock")
        && limit.Path
            is not (
                "handle.tip_depth_mm"
                or "handle.well_clearance_mm"
                or "pins.pivot_diameter_mm"
                or "pins.centre_diameter_mm"
                or "pins.rear_diameter_mm"
                or "pins.wall_mm"
                or "spring.width_mm"
            );

    /// <summary>Paths of the numbers that may be changed, as in <see cref="PatternLimit.Path"/>.</summary>
    public required ImmutableArray<string> Free { get; init; }

    /// <summary>True to change them until nothing above a note is found.</summary>
    public bool WantsNoFindings { get; init; }

    /// <summary>A pull at the nail nick that is wanted, in newtons; null for none.</summary>
    public double? WantedPullN { get; init; }

    /// <summary>Bending stress not to be passed, in MPa; null for what the steel bears at rest where a pull is wanted.</summary>
    public double? MostStressMpa { get; init; }

    /// <summary>Targets and tolerances of the check, for the filled-in dimensions of a pattern.</summary>
    public required Func<PatternParameters, BenchSettings> Bench { get; init; }

    /// <summary>Spring and steel in the handle, for the filled-in dimensions of a pattern; null leaves the handle out.</summary>
    public Func<PatternParameters, HandleSettings>? Handle { get; init; }
}
