using Flushback.Geometry;

namespace Flushback.Catalogue.Designs;

/// <summary>Knives of our own invention, shared by tests and benchmarks; the pattern names are invented too.</summary>
/// <remarks>With a spring 3.2 mm wide all of them pull as pocket knives do, at a stress that a spring temper stands.</remarks>
public static class KnifeCatalogue
{
    /// <summary>A half stop, sharp corners, hollow half-stop and closed faces, undercut shoulder; reads as before fitting.</summary>
    public static KnifeDesign Wagtail { get; } = new("Wagtail");

    /// <summary>A round tang without a half stop, its corners rounded.</summary>
    public static KnifeDesign Dunlin { get; } =
        new("Dunlin")
        {
            Spring = new SpringDesign { CentrePin = new Point(-28, 4.4), RearPin = new Point(-62, 5.6) },
            Tang = new TangDesign
            {
                HasHalfStop = false,
                OpenCornerRadiusMm = 0.5,
                ClosedCornerRadiusMm = 0.5,
            },
        };

    /// <summary>Every face hollow, every corner rounded.</summary>
    public static KnifeDesign Sandpiper { get; } =
        new("Sandpiper")
        {
            Spring = new SpringDesign
            {
                NoseRadiusMm = 0.25,
                EndFaceDeg = 82,
                FrontStockMm = 0.2,
            },
            Tang = new TangDesign
            {
                OpenRelief = new Relief(0.06, 0.6),
                OpenCornerRadiusMm = 0.3,
                HalfStopRelief = new Relief(0.07, 0.5),
                ClosedCornerRadiusMm = 0.35,
                ClosedRelief = new Relief(0.07, 0.4),
                KickRadiusMm = 0.7,
            },
            Blade = new BladeDesign { ShoulderRadiusMm = 0.2, CornerReliefMm = 0.4 },
        };

    /// <summary>A square shoulder on a square end face: no overhang, the open stop is a kink of the lift.</summary>
    public static KnifeDesign Plover { get; } =
        new("Plover")
        {
            Spring = new SpringDesign { EndFaceDeg = 90 },
            Blade = new BladeDesign { UndercutDeg = 90 },
        };

    /// <summary>Flat on flat everywhere: straight level faces without relief.</summary>
    public static KnifeDesign Curlew { get; } =
        new("Curlew")
        {
            Tang = new TangDesign
            {
                OpenTiltDeg = 0,
                HalfStopRelief = Relief.None,
                ClosedRelief = Relief.None,
            },
        };

    /// <summary>A small tang: hollow nose pad, stock on the front of the back, closed face a little askew.</summary>
    public static KnifeDesign Redshank { get; } =
        new("Redshank")
        {
            Spring = new SpringDesign
            {
                UndersideMm = 3,
                DepthMm = 2.6,
                ReachMm = 3.6,
                PadEndMm = 9,
                PadRelief = new Relief(0.03, 1.5),
                FrontStockMm = 0.3,
                CentrePin = new Point(-37.5, 3.4),
                RearPin = new Point(-71.5, 4.2),
            },
            Tang = new TangDesign { KickMm = 5.6, ClosedTiltDeg = 0.4 },
            Blade = new BladeDesign
            {
                UndercutDeg = 66,
                ShoulderMm = 2.5,
                LengthMm = 56,
                EdgeMm = 1.2,
            },
        };

    /// <summary>All of them.</summary>
    public static IReadOnlyList<KnifeDesign> All { get; } = [Wagtail, Dunlin, Sandpiper, Plover, Curlew, Redshank];
}
