using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Bench;

/// <summary>What the bench shows for a knife. All points and directions in the knife frame; millimetres and radians.</summary>
public sealed record BenchReport
{
    /// <summary>The knife and the way back to its drawing.</summary>
    public required Placement Placement { get; init; }

    /// <summary>The settings it was read with.</summary>
    public required BenchSettings Settings { get; init; }

    /// <summary>The stops the knife has, in the order open, half stop, closed.</summary>
    public required ImmutableArray<StopReading> Stops { get; init; }

    /// <summary>Local maxima of the lift between the stops, in order of blade angle.</summary>
    public required ImmutableArray<LiftPeak> Peaks { get; init; }

    /// <summary>Lift over the rotation.</summary>
    public required LiftCurve Curve { get; init; }

    /// <summary>The notch's inner corner against the nose, open; null when no notch was found.</summary>
    public required CornerGap? CornerGap { get; init; }

    /// <summary>Blade against spring and handle.</summary>
    public required Clearances Clearances { get; init; }

    /// <summary>True when the tang has a half stop.</summary>
    public required bool HasHalfStop { get; init; }

    /// <summary>What to look at, worst first.</summary>
    public required ImmutableArray<Finding> Findings { get; init; }

    /// <summary>True when no finding is above a note.</summary>
    public bool IsClean => Findings.All(finding => finding.Severity == Severity.Note);

    /// <summary>The reading of one stop, or null when the knife has none there.</summary>
    public StopReading? At(Stop stop) => Stops.FirstOrDefault(reading => reading.Stop == stop);
}

/// <summary>A reading against its window.</summary>
public enum ReadingVerdict
{
    /// <summary>Inside the window.</summary>
    Good,

    /// <summary>Below the window: too much metal gone.</summary>
    Low,

    /// <summary>Above the window: metal to take off.</summary>
    High,

    /// <summary>The blade does not rest at this stop.</summary>
    NoRest,
}

/// <summary>The dial at one stop.</summary>
public sealed record StopReading
{
    /// <summary>Which stop.</summary>
    public required Stop Stop { get; init; }

    /// <summary>True when the blade comes to rest here by itself.</summary>
    public required bool Rests { get; init; }

    /// <summary>Blade angle at rest; the nominal angle where the blade does not rest.</summary>
    public required Angle RestAngle { get; init; }

    /// <summary>Blade angle the stop is meant to have.</summary>
    public required Angle NominalAngle { get; init; }

    /// <summary>Open only: blade angle at which the shoulder butts on the end face; null without a shoulder.</summary>
    public Angle? ShoulderAngle { get; init; }

    /// <summary>Spring rotation at rest, from where the spring is drawn.</summary>
    public required Angle SpringRotation { get; init; }

    /// <summary>Dial reading at rest, zeroed at the open stop; positive is proud.</summary>
    public required double LiftMm { get; init; }

    /// <summary>Dial reading with the blade held at the nominal angle; null where no pose is possible.</summary>
    public required double? LiftAtNominalMm { get; init; }

    /// <summary>What the dial should read.</summary>
    public required StopTarget Target { get; init; }

    /// <summary>The reading against its window.</summary>
    public required ReadingVerdict Verdict { get; init; }

    /// <summary>Where blade and spring touch, from rear to front (-x to +x).</summary>
    public required ImmutableArray<Contact> Contacts { get; init; }

    /// <summary>The nearest pairs that do not touch, nearest first.</summary>
    public required ImmutableArray<Contact> NearMisses { get; init; }

    /// <summary>Distance between the outer contacts (ends of a face contact count); 0 with a single point.</summary>
    public required double ContactSpreadMm { get; init; }
}

/// <summary>A local maximum of the lift.</summary>
/// <param name="BladeAngle">Where.</param>
/// <param name="LiftMm">How high above open.</param>
/// <param name="BladeFace">What carries the spring there.</param>
public readonly record struct LiftPeak(Angle BladeAngle, double LiftMm, BladeFace BladeFace);

/// <summary>Lift over the rotation.</summary>
/// <param name="Samples">In order of blade angle; each rest angle is among them exactly.</param>
/// <param name="Intervals">Stretches carried by one pair of faces, in order.</param>
public sealed record LiftCurve(ImmutableArray<LiftSample> Samples, ImmutableArray<CarriedInterval> Intervals);

/// <summary>The bench at one blade angle.</summary>
/// <param name="BladeAngle">Blade angle.</param>
/// <param name="SpringRotation">Spring rotation from where the spring is drawn.</param>
/// <param name="LiftMm">Lift against open.</param>
/// <param name="SlopeMmPerRad">Slope of the lift towards larger blade angles.</param>
/// <param name="BladeFace">What carries the spring.</param>
/// <param name="SpringFace">What is carried.</param>
/// <param name="EdgeClearanceMm">Least distance between the edge and the spring; negative when they overlap.</param>
/// <param name="TipClearanceMm">Least distance between the tip and the spring; negative inside.</param>
/// <param name="TailClearanceMm">Least distance between blade and spring behind the centre pin; negative when they overlap.</param>
/// <param name="TipDepthMm">Depth of the tip inside the handle; negative outside; null without a handle.</param>
public readonly record struct LiftSample(
    Angle BladeAngle,
    Angle SpringRotation,
    double LiftMm,
    double SlopeMmPerRad,
    BladeFace BladeFace,
    SpringFace SpringFace,
    double EdgeClearanceMm,
    double TipClearanceMm,
    double TailClearanceMm,
    double? TipDepthMm
);

/// <summary>A stretch of the rotation in which one face of the blade carries one face of the spring.</summary>
public readonly record struct CarriedInterval(Angle From, Angle To, BladeFace BladeFace, SpringFace SpringFace);

/// <summary>The notch's inner corner against the nose with the blade at its open stop.</summary>
/// <param name="GapMm">Least distance; 0 when the nose sits in the corner.</param>
/// <param name="Corner">The nearest point of the corner.</param>
/// <param name="Nose">The nearest point of the spring.</param>
public readonly record struct CornerGap(double GapMm, Point Corner, Point Nose);

/// <summary>A least distance over the rotation and where it is met.</summary>
/// <param name="DistanceMm">Least distance; negative when the two overlap.</param>
/// <param name="BladeAngle">Blade angle at which it is least.</param>
/// <param name="At">The point on the blade, with the blade turned to that angle.</param>
public readonly record struct LeastClearance(double DistanceMm, Angle BladeAngle, Point At);

/// <summary>Distances between the blade and what is around it.</summary>
/// <param name="EdgeClosed">Edge against spring when closed.</param>
/// <param name="EdgeLeast">Edge against spring over the whole rotation.</param>
/// <param name="TipLeast">Tip against spring over the whole rotation.</param>
/// <param name="TailLeast">Blade against the spring behind the centre pin over the whole rotation.</param>
/// <param name="TipClosedAt">The tip when closed.</param>
/// <param name="TipDepthMm">Depth of the tip inside the handle when closed; negative when proud; null without a handle.</param>
public sealed record Clearances(
    LeastClearance EdgeClosed,
    LeastClearance EdgeLeast,
    LeastClearance TipLeast,
    LeastClearance TailLeast,
    Point TipClosedAt,
    double? TipDepthMm
);
