using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;

namespace Flushback.Patterns.Pairs;

/// <summary>Two blades in one handle, drawn; each in its own knife frame.</summary>
public sealed record DrawnPair
{
    /// <summary>The page, as given.</summary>
    public required PairParameters Parameters { get; init; }

    /// <summary>The first blade with its spring and the handle.</summary>
    public required DrawnPattern First { get; init; }

    /// <summary>The second blade with its spring, in the frame of its own pivot; its handle is the first one's.</summary>
    public required DrawnPattern Second { get; init; }

    /// <summary>From the frame of the second blade to that of the first: mirrored where it opens at the other end.</summary>
    public required RigidMotion SecondToFirst { get; init; }

    /// <summary>How near the blades come to each other.</summary>
    public required PairClearance Clearance { get; init; }

    /// <summary>The bench check of the first blade, as the pair was proved on it.</summary>
    public required BenchReport FirstBench { get; init; }

    /// <summary>The bench check of the second blade.</summary>
    public required BenchReport SecondBench { get; init; }
}

/// <summary>How near two blades in one handle come to each other.</summary>
/// <param name="SidewaysMm">Room between the layers the blades turn in; negative where they share a layer, by how much.</param>
/// <param name="LeastMm">Least wanted distance.</param>
/// <param name="Cases">The blades at rest and on their ways, in the drawing's plane.</param>
/// <param name="Findings">What is too near.</param>
public sealed record PairClearance(
    double SidewaysMm,
    double LeastMm,
    ImmutableArray<ClearanceCase> Cases,
    ImmutableArray<Finding> Findings
)
{
    /// <summary>True when the blades turn in layers of their own, so far apart that they pass each other.</summary>
    public bool AreLayered => SidewaysMm >= LeastMm;

    /// <summary>Where the blades come nearest in the plane; the first of them where several overlap.</summary>
    public ClearanceCase Least => Cases.MinBy(found => found.DistanceMm);
}

/// <summary>One way of the blades past each other.</summary>
/// <param name="Kind">What the blades do.</param>
/// <param name="DistanceMm">Shortest distance in the plane; 0 where they overlap.</param>
/// <param name="Overlaps">True where their outlines overlap.</param>
/// <param name="FirstAngle">Angle of the first blade there.</param>
/// <param name="SecondAngle">Angle of the second blade there.</param>
/// <param name="At">Where on the first blade, frame of the first, blade turned.</param>
/// <param name="OnSecond">Where on the second, in the same frame.</param>
public readonly record struct ClearanceCase(
    ClearanceKind Kind,
    double DistanceMm,
    bool Overlaps,
    Angle FirstAngle,
    Angle SecondAngle,
    Point At,
    Point OnSecond
);

/// <summary>What two blades do while their distance is taken.</summary>
public enum ClearanceKind
{
    /// <summary>Both are closed.</summary>
    BothClosed,

    /// <summary>The first turns from open to closed, the second is closed.</summary>
    FirstTurnsSecondClosed,

    /// <summary>The first turns, the second is open.</summary>
    FirstTurnsSecondOpen,

    /// <summary>The second turns, the first is closed.</summary>
    SecondTurnsFirstClosed,

    /// <summary>The second turns, the first is open.</summary>
    SecondTurnsFirstOpen,
}
