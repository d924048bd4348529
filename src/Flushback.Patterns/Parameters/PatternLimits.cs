using System.Collections.Immutable;

namespace Flushback.Patterns.Parameters;

/// <summary>Every number of a pattern with unit, default, limits and meaning.</summary>
/// <remarks>
/// Limits are those of pocket knives a hand can hold and a shop can cut (common practice, no source). Within them two
/// numbers may still not go together: that is a <see cref="PatternConflict"/>.
/// </remarks>
public static class PatternLimits
{
    /// <summary>All of them, group by group.</summary>
    public static ImmutableArray<PatternLimit> All { get; } =
    [.. Handle(), .. Pins(), .. Tang(), .. Spring(), .. Blade(), .. Readings(), .. Stock()];

    private static readonly ImmutableDictionary<string, PatternLimit> _byPath = All.ToImmutableDictionary(limit =>
        limit.Path
    );

    /// <summary>True when there is a number of that path.</summary>
    public static bool Has(string path) => _byPath.ContainsKey(path);

    /// <summary>The row of a path such as <c>tang.height_mm</c>.</summary>
    /// <exception cref="KeyNotFoundException">There is no such number.</exception>
    public static PatternLimit Of(string path) => _byPath[path];

    /// <summary>One sentence for each number that is none or lies outside its limits, in the order of the table.</summary>
    public static IEnumerable<PatternConflict> Violations(PatternParameters parameters) =>
        All.Where(limit => limit.Read(parameters) is { } value && !(value >= limit.Least && value <= limit.Most))
            .Select(limit => new PatternConflict(
                FormattableString.Invariant(
                    $"The {limit.Name} is {limit.Read(parameters):0.###} {limit.Unit}; it has to lie between {limit.Least:0.###} and {limit.Most:0.###} {limit.Unit}."
                ),
                [limit.Path]
            ));

    private static PatternLimit Row(
        string path,
        string name,
        double least,
        double most,
        string meaning,
        Func<PatternParameters, double?> read,
        Func<PatternParameters, double?, PatternParameters> write,
        string? follows = null
    ) =>
        new()
        {
            Path = path,
            Name = name,
            Least = least,
            Most = most,
            Meaning = meaning,
            Read = read,
            Write = (parameters, value) =>
                value is null && follows is null
                    ? throw new ArgumentNullException(nameof(value), $"{path} has a value of its own; give one.")
                    : write(parameters, value),
            Follows = follows,
        };

    private static IEnumerable<PatternLimit> Handle() =>
        [
            Row(
                "handle.closed_length_mm",
                "closed length",
                40,
                150,
                "Length of the handle, from its front end to its butt.",
                p => p.Handle.ClosedLengthMm,
                (p, v) => p with { Handle = p.Handle with { ClosedLengthMm = v!.Value } }
            ),
            Row(
                "handle.overall_length_mm",
                "overall length",
                60,
                280,
                "Length with the blade open, from the butt to the tip.",
                p => p.Handle.OverallLengthMm,
                (p, v) => p with { Handle = p.Handle with { OverallLengthMm = v } },
                "closed length and blade length together"
            ),
            Row(
                "handle.front_mm",
                "handle front",
                2.5,
                20,
                "Distance from the pivot forward to the handle's front end.",
                p => p.Handle.FrontMm,
                (p, v) => p with { Handle = p.Handle with { FrontMm = v } },
                "1.3 mm more than the tang height, or as far as covers tang and nose"
            ),
            Row(
                "handle.height_mm",
                "handle height",
                6,
                40,
                "Height of the handle halfway along, from the handle's line to its lower line.",
                p => p.Handle.HeightMm,
                (p, v) => p with { Handle = p.Handle with { HeightMm = v } },
                "as high as leaves the nail nick out of the closed handle"
            ),
            Row(
                "handle.taper_mm",
                "handle taper",
                -4,
                8,
                "How much higher the handle is at the butt than at the front.",
                p => p.Handle.TaperMm,
                (p, v) => p with { Handle = p.Handle with { TaperMm = v!.Value } }
            ),
            Row(
                "handle.swell_mm",
                "handle swell",
                -3,
                4,
                "How far the lower line bellies out of the straight; negative for a hollow line.",
                p => p.Handle.SwellMm,
                (p, v) => p with { Handle = p.Handle with { SwellMm = v!.Value } }
            ),
            Row(
                "handle.back_drop_mm",
                "back drop",
                0,
                5,
                "How far the back has curved down at the rear pin; 0 for a straight back.",
                p => p.Handle.BackDropMm,
                (p, v) => p with { Handle = p.Handle with { BackDropMm = v!.Value } }
            ),
            Row(
                "handle.tip_depth_mm",
                "tip depth",
                0.5,
                6,
                "Least depth of the tip inside the handle, blade closed.",
                p => p.Handle.TipDepthMm,
                (p, v) => p with { Handle = p.Handle with { TipDepthMm = v!.Value } }
            ),
            Row(
                "handle.well_clearance_mm",
                "well clearance",
                0.2,
                2,
                "Room around the closed blade in the well.",
                p => p.Handle.WellClearanceMm,
                (p, v) => p with { Handle = p.Handle with { WellClearanceMm = v!.Value } }
            ),
        ];

    private static IEnumerable<PatternLimit> Pins() =>
        [
            Row(
                "pins.pivot_diameter_mm",
                "pivot diameter",
                1,
                6,
                "Diameter of the blade pin.",
                p => p.Pins.PivotDiameterMm,
                (p, v) => p with { Pins = p.Pins with { PivotDiameterMm = v!.Value } }
            ),
            Row(
                "pins.centre_diameter_mm",
                "centre pin diameter",
                0.8,
                5,
                "Diameter of the centre pin.",
                p => p.Pins.CentreDiameterMm,
                (p, v) => p with { Pins = p.Pins with { CentreDiameterMm = v!.Value } }
            ),
            Row(
                "pins.rear_diameter_mm",
                "rear pin diameter",
                0.8,
                5,
                "Diameter of the rear pin.",
                p => p.Pins.RearDiameterMm,
                (p, v) => p with { Pins = p.Pins with { RearDiameterMm = v!.Value } }
            ),
            Row(
                "pins.centre_behind_mm",
                "centre pin place",
                12,
                90,
                "Distance of the centre pin behind the pivot, along the handle.",
                p => p.Pins.CentreBehindMm,
                (p, v) => p with { Pins = p.Pins with { CentreBehindMm = v } },
                "0.51 of the closed length"
            ),
            Row(
                "pins.rear_behind_mm",
                "rear pin place",
                25,
                145,
                "Distance of the rear pin behind the pivot, along the handle.",
                p => p.Pins.RearBehindMm,
                (p, v) => p with { Pins = p.Pins with { RearBehindMm = v } },
                "0.83 of the closed length"
            ),
            Row(
                "pins.centre_depth_mm",
                "centre pin depth",
                0.8,
                10,
                "Depth of the centre pin's middle under the handle's line.",
                p => p.Pins.CentreDepthMm,
                (p, v) => p with { Pins = p.Pins with { CentreDepthMm = v } },
                "half the spring's depth there"
            ),
            Row(
                "pins.rear_depth_mm",
                "rear pin depth",
                0.8,
                10,
                "Depth of the rear pin's middle under the handle's line.",
                p => p.Pins.RearDepthMm,
                (p, v) => p with { Pins = p.Pins with { RearDepthMm = v } },
                "half the spring's depth there"
            ),
            Row(
                "pins.wall_mm",
                "pin wall",
                0.4,
                3,
                "Least metal to be left around a pin.",
                p => p.Pins.WallMm,
                (p, v) => p with { Pins = p.Pins with { WallMm = v!.Value } }
            ),
        ];

    private static IEnumerable<PatternLimit> Tang() =>
        [
            Row(
                "tang.height_mm",
                "tang height",
                2.5,
                9,
                "Height of the open flat's rear over the pivot, where the spring's underside lies when open.",
                p => p.Tang.HeightMm,
                (p, v) => p with { Tang = p.Tang with { HeightMm = v!.Value } }
            ),
            Row(
                "tang.length_mm",
                "tang length",
                5,
                26,
                "Length from the foot of the shoulder to the rear of the tang.",
                p => p.Tang.LengthMm,
                (p, v) => p with { Tang = p.Tang with { LengthMm = v } },
                "as long as lets the nose reach over the open corner at the half stop"
            ),
            Row(
                "tang.run_rise_mm",
                "run rise",
                0.2,
                2.5,
                "Round tang only: how far the back rises over its open place while the round of the tang carries the spring.",
                p => p.Tang.RunRiseMm,
                (p, v) => p with { Tang = p.Tang with { RunRiseMm = v!.Value } }
            ),
            Row(
                "tang.open_flat_depth_mm",
                "open flat depth",
                1,
                8,
                "Depth of the open flat under the spine: the height of the shoulder.",
                p => p.Tang.OpenFlatDepthMm,
                (p, v) => p with { Tang = p.Tang with { OpenFlatDepthMm = v } },
                "0.2 mm less than the spring's depth at the nose"
            ),
            Row(
                "tang.open_flat_tilt_deg",
                "open flat tilt",
                0.25,
                4,
                "Slope of the open flat, rising to the rear, so that the open corner bears.",
                p => p.Tang.OpenFlatTiltDeg,
                (p, v) => p with { Tang = p.Tang with { OpenFlatTiltDeg = v!.Value } }
            ),
            Row(
                "tang.shoulder_deg",
                "shoulder angle",
                55,
                89,
                "Angle in the notch between a level flat and the shoulder; below 90 the shoulder overhangs the nose.",
                p => p.Tang.ShoulderDeg,
                (p, v) => p with { Tang = p.Tang with { ShoulderDeg = v!.Value } }
            ),
            Row(
                "tang.shoulder_radius_mm",
                "shoulder radius",
                0,
                1,
                "Radius of the shoulder's top.",
                p => p.Tang.ShoulderRadiusMm,
                (p, v) => p with { Tang = p.Tang with { ShoulderRadiusMm = v!.Value } }
            ),
            Row(
                "tang.notch_radius_mm",
                "notch radius",
                0,
                1.2,
                "Radius of the hollow about the notch's inner corner; 0 leaves the corner sharp.",
                p => p.Tang.NotchRadiusMm,
                (p, v) => p with { Tang = p.Tang with { NotchRadiusMm = v!.Value } }
            ),
            Row(
                "tang.open_corner_radius_mm",
                "open corner radius",
                0,
                1.5,
                "Radius of the corner between open flat and half-stop face, or round.",
                p => p.Tang.OpenCornerRadiusMm,
                (p, v) => p with { Tang = p.Tang with { OpenCornerRadiusMm = v!.Value } }
            ),
            Row(
                "tang.closed_corner_radius_mm",
                "closed corner radius",
                0,
                1.5,
                "Radius of the corner between half-stop face, or round, and closed face.",
                p => p.Tang.ClosedCornerRadiusMm,
                (p, v) => p with { Tang = p.Tang with { ClosedCornerRadiusMm = v!.Value } }
            ),
            Row(
                "tang.open_relief_mm",
                "open flat relief",
                0,
                0.4,
                "Depth of the hollow in the middle of the open flat.",
                p => p.Tang.OpenReliefMm,
                (p, v) => p with { Tang = p.Tang with { OpenReliefMm = v!.Value } }
            ),
            Row(
                "tang.half_stop_relief_mm",
                "half-stop relief",
                0,
                0.4,
                "Depth of the hollow in the middle of the half-stop face, so that its two ends bear.",
                p => p.Tang.HalfStopReliefMm,
                (p, v) => p with { Tang = p.Tang with { HalfStopReliefMm = v!.Value } }
            ),
            Row(
                "tang.closed_relief_mm",
                "closed face relief",
                0,
                0.4,
                "Depth of the hollow in the middle of the closed face, so that corner and kick bear.",
                p => p.Tang.ClosedReliefMm,
                (p, v) => p with { Tang = p.Tang with { ClosedReliefMm = v!.Value } }
            ),
            Row(
                "tang.relief_land_mm",
                "relief land",
                0,
                0.9,
                "Straight length left at either end of a hollow face.",
                p => p.Tang.ReliefLandMm,
                (p, v) => p with { Tang = p.Tang with { ReliefLandMm = v!.Value } }
            ),
            Row(
                "tang.kick_height_mm",
                "kick height",
                0.3,
                6,
                "How far the kick stands out under the edge, which keeps the edge off the spring.",
                p => p.Tang.KickHeightMm,
                (p, v) => p with { Tang = p.Tang with { KickHeightMm = v } },
                "0.35 tang heights and 0.7 back drops, or the rest of the blade's width where that is given"
            ),
            Row(
                "tang.kick_place_mm",
                "kick place",
                2.5,
                20,
                "How far in front of the pivot, blade open, the kick bears on the spring.",
                p => p.Tang.KickPlaceMm,
                (p, v) => p with { Tang = p.Tang with { KickPlaceMm = v } },
                "1.5 tang heights"
            ),
            Row(
                "tang.kick_radius_mm",
                "kick radius",
                0.1,
                3,
                "Radius of the kick.",
                p => p.Tang.KickRadiusMm,
                (p, v) => p with { Tang = p.Tang with { KickRadiusMm = v!.Value } }
            ),
        ];

    private static IEnumerable<PatternLimit> Spring() =>
        [
            Row(
                "spring.nose_depth_mm",
                "spring depth at the nose",
                1.5,
                8,
                "Depth of the spring over the tang, without stock.",
                p => p.Spring.NoseDepthMm,
                (p, v) => p with { Spring = p.Spring with { NoseDepthMm = v!.Value } }
            ),
            Row(
                "spring.centre_depth_mm",
                "spring depth at the centre pin",
                1.8,
                12,
                "Depth of the spring at the centre pin, without stock.",
                p => p.Spring.CentreDepthMm,
                (p, v) => p with { Spring = p.Spring with { CentreDepthMm = v } },
                "as deep as the edge leaves room for, and no more than 1.35 times the depth at the nose"
            ),
            Row(
                "spring.rear_depth_mm",
                "spring depth at the rear pin",
                1.5,
                12,
                "Depth of the spring at the rear pin, without stock.",
                p => p.Spring.RearDepthMm,
                (p, v) => p with { Spring = p.Spring with { RearDepthMm = v } },
                "0.8 of the depth at the centre pin, or as deep as the edge leaves room for"
            ),
            Row(
                "spring.end_face_deg",
                "end face angle",
                57,
                90,
                "Angle in the metal between the spring's underside and its end face.",
                p => p.Spring.EndFaceDeg,
                (p, v) => p with { Spring = p.Spring with { EndFaceDeg = v!.Value } }
            ),
            Row(
                "spring.nose_radius_mm",
                "nose radius",
                0,
                1,
                "Radius of the nose's lower corner.",
                p => p.Spring.NoseRadiusMm,
                (p, v) => p with { Spring = p.Spring with { NoseRadiusMm = v!.Value } }
            ),
            Row(
                "spring.pad_end_mm",
                "pad end",
                4,
                35,
                "How far behind the pivot the straight underside of the nose ends and the belly begins.",
                p => p.Spring.PadEndMm,
                (p, v) => p with { Spring = p.Spring with { PadEndMm = v } },
                "3.5 mm behind where the kick bears when closed"
            ),
            Row(
                "spring.belly_relief_mm",
                "belly relief",
                0,
                3,
                "How deep the spring's belly is hollowed between the nose's underside and the centre pin.",
                p => p.Spring.BellyReliefMm,
                (p, v) => p with { Spring = p.Spring with { BellyReliefMm = v!.Value } }
            ),
            Row(
                "spring.front_stock_mm",
                "front stock",
                0,
                1.5,
                "Stock on the spring's back over the tang, to be trimmed to the handle's line in fitting.",
                p => p.Spring.FrontStockMm,
                (p, v) => p with { Spring = p.Spring with { FrontStockMm = v!.Value } }
            ),
            Row(
                "spring.rear_stock_mm",
                "rear stock",
                0,
                1.5,
                "Stock on the spring's back behind the centre pin; no more than in front, so that it trims to one line.",
                p => p.Spring.RearStockMm,
                (p, v) => p with { Spring = p.Spring with { RearStockMm = v!.Value } }
            ),
            Row(
                "spring.preload_mm",
                "preload",
                0,
                1.5,
                "How far the nose would sink over the pivot, were the blade taken out; it moves the rear pin's hole in the spring.",
                p => p.Spring.PreloadMm,
                (p, v) => p with { Spring = p.Spring with { PreloadMm = v } },
                "0.0035 of the closed length with a half stop, 0.01 of it on a round tang, over which the spring travels less"
            ),
            Row(
                "spring.width_mm",
                "spring width",
                0.8,
                8,
                "Width of the spring, square to the drawing; recorded for the check in the handle.",
                p => p.Spring.WidthMm,
                (p, v) => p with { Spring = p.Spring with { WidthMm = v!.Value } }
            ),
        ];

    private static IEnumerable<PatternLimit> Blade() =>
        [
            Row(
                "blade.length_mm",
                "blade length",
                20,
                140,
                "Length from the handle's front end to the tip, blade open.",
                p => p.Blade.LengthMm,
                (p, v) => p with { Blade = p.Blade with { LengthMm = v } },
                "the rest of the overall length, or else 0.76 of the closed length or what the handle has room for"
            ),
            Row(
                "blade.width_mm",
                "blade width",
                5,
                30,
                "Width from the spine to the edge.",
                p => p.Blade.WidthMm,
                (p, v) => p with { Blade = p.Blade with { WidthMm = v } },
                "what tang height, open flat depth and kick height make it"
            ),
            Row(
                "blade.point_mm",
                "point length",
                4,
                110,
                "How far before the tip the spine begins to fall: length of the clip or of the drop.",
                p => p.Blade.PointMm,
                (p, v) => p with { Blade = p.Blade with { PointMm = v } },
                "a share of the blade's length or width that the family has"
            ),
            Row(
                "blade.sweep_mm",
                "edge sweep",
                4,
                110,
                "How far before the tip the edge begins to rise; none where the family has a straight edge.",
                p => p.Blade.SweepMm,
                (p, v) => p with { Blade = p.Blade with { SweepMm = v } },
                "a share of the blade's length or width that the family has"
            ),
            Row(
                "blade.ricasso_mm",
                "ricasso",
                2,
                25,
                "Length from where the kick bears to where the edge begins.",
                p => p.Blade.RicassoMm,
                (p, v) => p with { Blade = p.Blade with { RicassoMm = v!.Value } }
            ),
            Row(
                "blade.choil_radius_mm",
                "choil radius",
                0,
                3,
                "Radius of the choil, the round cut where the edge begins; 0 for none.",
                p => p.Blade.ChoilRadiusMm,
                (p, v) => p with { Blade = p.Blade with { ChoilRadiusMm = v!.Value } }
            ),
            Row(
                "blade.nick_place_mm",
                "nail nick place",
                8,
                150,
                "Distance of the middle of the nail nick from the pivot.",
                p => p.Blade.NickPlaceMm,
                (p, v) => p with { Blade = p.Blade with { NickPlaceMm = v } },
                "just behind where the spine begins to fall, at most 0.6 of the way to the tip"
            ),
            Row(
                "blade.nick_length_mm",
                "nail nick length",
                4,
                30,
                "Length of the nail nick.",
                p => p.Blade.NickLengthMm,
                (p, v) => p with { Blade = p.Blade with { NickLengthMm = v!.Value } }
            ),
            Row(
                "blade.nick_width_mm",
                "nail nick width",
                0.6,
                4,
                "Width of the nail nick.",
                p => p.Blade.NickWidthMm,
                (p, v) => p with { Blade = p.Blade with { NickWidthMm = v!.Value } }
            ),
        ];

    private static IEnumerable<PatternLimit> Readings() =>
        [
            Row(
                "readings.open_mm",
                "open reading",
                -0.3,
                0.3,
                "How far the finished back stands over the handle's line, blade open; the dial is zeroed there.",
                p => p.Readings.OpenMm,
                (p, v) => p with { Readings = p.Readings with { OpenMm = v!.Value } }
            ),
            Row(
                "readings.half_stop_mm",
                "half-stop reading",
                -0.3,
                0.6,
                "What the dial reads at the half stop, zeroed open.",
                p => p.Readings.HalfStopMm,
                (p, v) => p with { Readings = p.Readings with { HalfStopMm = v!.Value } }
            ),
            Row(
                "readings.closed_mm",
                "closed reading",
                -0.3,
                0.8,
                "What the dial reads when closed, zeroed open.",
                p => p.Readings.ClosedMm,
                (p, v) => p with { Readings = p.Readings with { ClosedMm = v!.Value } }
            ),
            Row(
                "readings.half_stop_rest_deg",
                "half-stop rest angle",
                87,
                93,
                "Blade angle at which the blade rests at the half stop.",
                p => p.Readings.HalfStopRestDeg,
                (p, v) => p with { Readings = p.Readings with { HalfStopRestDeg = v!.Value } }
            ),
            Row(
                "readings.closed_rest_deg",
                "closed rest angle",
                177,
                182,
                "Blade angle at which the blade rests when closed.",
                p => p.Readings.ClosedRestDeg,
                (p, v) => p with { Readings = p.Readings with { ClosedRestDeg = v!.Value } }
            ),
        ];

    private static IEnumerable<PatternLimit> Stock() =>
        [
            Row(
                "stock.blade_mm",
                "blade stock",
                0,
                1,
                "Stock all around the blade, to be ground off after heat treatment.",
                p => p.Stock.BladeMm,
                (p, v) => p with { Stock = p.Stock with { BladeMm = v!.Value } }
            ),
            Row(
                "stock.spring_mm",
                "spring stock",
                0,
                1,
                "Stock all around the spring, to be ground off after heat treatment.",
                p => p.Stock.SpringMm,
                (p, v) => p with { Stock = p.Stock with { SpringMm = v!.Value } }
            ),
            Row(
                "stock.kerf_mm",
                "kerf",
                0,
                2,
                "Width of the kerf of the machine that cuts; recorded, the outlines are drawn without it.",
                p => p.Stock.KerfMm,
                (p, v) => p with { Stock = p.Stock with { KerfMm = v!.Value } }
            ),
        ];
}
