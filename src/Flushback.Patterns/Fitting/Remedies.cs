using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;

namespace Flushback.Patterns.Fitting;

/// <summary>Which numbers of a page take a finding away.</summary>
internal static class Remedies
{
    private static readonly ImmutableArray<string> _spring =
    [
        .. FitSettings.SpringPaths,
        "spring.belly_relief_mm",
        "pins.rear_behind_mm",
        "pins.centre_diameter_mm",
    ];

    /// <summary>The paths for a finding; empty when the page has none, null when any may.</summary>
    public static ImmutableArray<string>? For(Finding finding) =>
        finding.Code switch
        {
            FindingCodes.ReadingHigh or FindingCodes.ReadingLow => ReadingAt(finding.Stop),
            FindingCodes.RestAngleOff => RestAt(finding.Stop),
            FindingCodes.SingleContact or FindingCodes.ManyContacts or FindingCodes.FaceContact => FaceAt(finding.Stop),
            FindingCodes.ContactsClose =>
            [
                "tang.height_mm",
                "tang.kick_place_mm",
                "tang.open_corner_radius_mm",
                "tang.closed_corner_radius_mm",
                "tang.run_rise_mm",
            ],
            FindingCodes.CornerTouching => ["tang.notch_radius_mm", "spring.nose_radius_mm", "tang.shoulder_deg"],
            FindingCodes.EdgeNearSpring or FindingCodes.TailContact =>
            [
                "tang.kick_height_mm",
                "spring.centre_depth_mm",
                "spring.rear_depth_mm",
                "spring.belly_relief_mm",
            ],
            FindingCodes.TipProud => ["handle.height_mm", "handle.taper_mm", "blade.length_mm"],
            FindingCodes.StockOrder => ["spring.front_stock_mm", "spring.rear_stock_mm"],
            FindingCodes.SpringTakesSet or FindingCodes.SpringTires => _spring,
            FindingCodes.PullLight or FindingCodes.PullHeavy => [.. _spring, "spring.width_mm", "blade.nick_place_mm"],
            FindingCodes.ContactYields =>
            [
                "tang.open_corner_radius_mm",
                "tang.closed_corner_radius_mm",
                "tang.kick_radius_mm",
                "spring.preload_mm",
                "spring.width_mm",
                "pins.centre_behind_mm",
            ],
            FindingCodes.HardnessPair or FindingCodes.NoHandle => [],
            _ => null,
        };

    private static ImmutableArray<string> ReadingAt(Stop? stop) =>
        stop == Stop.HalfStop ? ["readings.half_stop_mm"] : ["readings.closed_mm"];

    private static ImmutableArray<string> RestAt(Stop? stop) =>
        stop == Stop.HalfStop ? ["readings.half_stop_rest_deg"] : ["readings.closed_rest_deg"];

    private static ImmutableArray<string> FaceAt(Stop? stop) =>
        stop switch
        {
            Stop.Open => ["tang.open_flat_tilt_deg", "tang.open_relief_mm", "tang.relief_land_mm"],
            Stop.HalfStop => ["tang.half_stop_relief_mm", "tang.relief_land_mm"],
            _ => ["tang.closed_relief_mm", "tang.relief_land_mm"],
        };
}
