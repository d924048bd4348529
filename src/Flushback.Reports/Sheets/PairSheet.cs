using Flushback.Patterns.Pairs;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>Two blades past each other in words: what the terminal and the page have in common.</summary>
internal sealed record PairSheet
{
    public required bool IsShared { get; init; }

    public required string Told { get; init; }

    /// <summary>In which frame the second blade is told.</summary>
    public required string SecondFrame { get; init; }

    public required IReadOnlyList<PassingRow> Passings { get; init; }

    /// <summary>Puts a pair into words.</summary>
    public static PairSheet Of(DrawnPair pair, Measure measure)
    {
        bool isShared = pair.Parameters.Arrangement == Arrangement.SharedSpring;
        return new PairSheet
        {
            IsShared = isShared,
            Told = $"{(isShared ? Shared : "Each blade has a spring of its own.")} {Sideways(pair.Clearance, measure)}",
            SecondFrame = pair.SecondToFirst.Mirrored
                ? $"Told and drawn as if it were the first: from its own pivot, which is at x {measure.Mm(pair.SecondToFirst.Shift.X, 2)} in the drawing, with x counted the other way."
                : "Places are those of the drawing: both blades turn on one pin.",
            Passings = [.. pair.Clearance.Cases.Select(found => PassingRow.Of(found, measure))],
        };
    }

    private const string Shared =
        "Both blades bear on one spring. Read on the bench only: in the handle it bends under both at once, so its pull and"
        + " stress are not worked out.";

    private static string Sideways(PairClearance clearance, Measure measure) =>
        (
            clearance.SidewaysMm < 0
                ? $"Sideways the blades share {measure.Length(-clearance.SidewaysMm)} of their layers;"
                : $"Sideways there is {measure.Length(clearance.SidewaysMm)} between the blades' layers;"
        )
        + $" {measure.Length(clearance.LeastMm)} of room is wanted. "
        + (
            clearance.AreLayered
                ? "So they pass side by side, whatever the plane of the drawing shows."
                : "So they have to keep clear of each other in the plane of the drawing."
        );
}

/// <summary>One way of the blades past each other, where they are nearest.</summary>
internal sealed record PassingRow(string First, string Second, string Mm, string Thou, string At)
{
    public static PassingRow Of(ClearanceCase found, Measure measure) =>
        new(
            FirstOf(found.Kind),
            SecondOf(found.Kind),
            found.Overlaps ? "overlap" : measure.Mm(found.DistanceMm),
            found.Overlaps ? "" : measure.Thou(found.DistanceMm),
            $"{measure.DegreesOnly(found.FirstAngle, 1)} and {measure.DegreesOnly(found.SecondAngle, 1)}"
        );

    private static string FirstOf(ClearanceKind kind) =>
        kind switch
        {
            ClearanceKind.FirstTurnsSecondClosed or ClearanceKind.FirstTurnsSecondOpen => "turns",
            ClearanceKind.SecondTurnsFirstOpen => "open",
            _ => "closed",
        };

    private static string SecondOf(ClearanceKind kind) =>
        kind switch
        {
            ClearanceKind.SecondTurnsFirstClosed or ClearanceKind.SecondTurnsFirstOpen => "turns",
            ClearanceKind.FirstTurnsSecondOpen => "open",
            _ => "closed",
        };
}
