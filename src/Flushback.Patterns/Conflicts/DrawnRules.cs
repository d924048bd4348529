using Flushback.Geometry;
using Flushback.Geometry.Checking;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Conflicts;

/// <summary>What is measured on the outlines once they are drawn: metal around pins, the tip in the handle, the nail nick.</summary>
internal static class DrawnRules
{
    private const double NickInsideMm = 0.4;

    /// <summary>The conflicts of the drawn outlines.</summary>
    public static IEnumerable<PatternConflict> Of(PatternLayout layout, DrawnPattern pattern) =>
        [
            .. Crossings(pattern),
            .. Walls(layout, pattern),
            .. Tip(layout, pattern),
            .. NickOnBlade(layout, pattern),
            .. NickOutOfHandle(layout, pattern),
        ];

    /// <summary>Safety net: no known set of parameters gets here with an outline that is none.</summary>
    public static IEnumerable<PatternConflict> Crossings(DrawnPattern pattern)
    {
        foreach (PatternPiece piece in pattern.Pieces)
        {
            string group = piece.Kind.ToString().ToLowerInvariant();
            foreach (Outline outline in piece.HasStock ? new[] { piece.Finished, piece.Rough } : [piece.Finished])
            {
                foreach (
                    OutlineFlaw flaw in OutlineCheck.FlawsOf(outline.Vertices.AsSpan(), GeometryTolerances.Default)
                )
                {
                    yield return Conflict.Of(
                        FormattableString.Invariant(
                            $"The outline of the {group} would cross or touch itself at ({flaw.At.X:0.00}, {flaw.At.Y:0.00}) mm from the pivot; make the radii, reliefs or stock of the {group} smaller."
                        ),
                        [.. PatternLimits.All.Where(limit => limit.Group == group).Select(limit => limit.Path)]
                    );
                }
            }
        }
    }

    private static IEnumerable<PatternConflict> Walls(PatternLayout layout, DrawnPattern pattern)
    {
        PinParameters pins = layout.Dimensions.Pins;
        foreach (PatternPiece piece in pattern.Pieces)
        {
            foreach (PatternHole hole in piece.Holes)
            {
                double wall = piece.Finished.SignedDistanceMm(hole.Circle.Centre) - hole.Circle.RadiusMm;
                if (!(wall >= pins.WallMm))
                {
                    yield return Wall(piece.Kind, hole, wall, pins.WallMm);
                }
            }
        }
    }

    private static PatternConflict Wall(PieceKind piece, PatternHole hole, double wallMm, double leastMm)
    {
        (string pin, string place, string deeper, string[] paths) = (piece, hole.Pin) switch
        {
            (PieceKind.Blade, _) => (
                "pivot",
                "of the tang",
                "make the tang higher or the pivot thinner",
                new[] { "pins.pivot_diameter_mm", "tang.height_mm" }
            ),
            (PieceKind.Handle, PinKind.Pivot) => (
                "pivot",
                "of the handle",
                "make the handle higher or the pivot thinner",
                ["pins.pivot_diameter_mm", "handle.height_mm", "handle.front_mm"]
            ),
            (PieceKind.Spring, PinKind.Centre) => (
                "centre pin",
                "of the spring",
                "make the spring deeper there or the pin thinner, or place it in the middle of the spring",
                ["pins.centre_diameter_mm", "pins.centre_depth_mm", "spring.centre_depth_mm"]
            ),
            (PieceKind.Spring, _) => (
                "rear pin",
                "of the spring",
                "make the spring deeper there or the pin thinner, or place it in the middle of the spring",
                ["pins.rear_diameter_mm", "pins.rear_depth_mm", "spring.rear_depth_mm"]
            ),
            (_, PinKind.Centre) => (
                "centre pin",
                "of the handle",
                "place the pin deeper or make it thinner",
                ["pins.centre_diameter_mm", "pins.centre_depth_mm", "handle.height_mm"]
            ),
            _ => (
                "rear pin",
                "of the handle",
                "place the pin deeper or farther from the butt, or make it thinner",
                ["pins.rear_diameter_mm", "pins.rear_depth_mm", "pins.rear_behind_mm"]
            ),
        };
        return Conflict.Of(
            $"The {pin} of {Said.Length(hole.Circle.DiameterMm)} has {Said.Length(wallMm)} {place} around it where the pin wall asks for {Said.Length(leastMm)}; {deeper}.",
            [.. paths, "pins.wall_mm"]
        );
    }

    private static IEnumerable<PatternConflict> Tip(PatternLayout layout, DrawnPattern pattern)
    {
        HandleParameters handle = layout.Dimensions.Handle;
        double depth = pattern.Handle.Finished.SignedDistanceMm(Closed(layout).Apply(layout.Blade.Tip));
        if (!(depth >= handle.TipDepthMm))
        {
            yield return Conflict.Of(
                $"Closed, the tip lies {Said.Length(depth)} inside the handle, less than the tip depth of {Said.Length(handle.TipDepthMm)}; make the handle higher than {Said.Length(handle.HeightMm!.Value)} or its taper more than {Said.Length(handle.TaperMm)}, the blade shorter, or choose a family whose tip lies lower.",
                "handle.tip_depth_mm",
                "handle.height_mm",
                "handle.taper_mm",
                "blade.length_mm",
                "blade.family"
            );
        }
    }

    private static IEnumerable<PatternConflict> NickOnBlade(PatternLayout layout, DrawnPattern pattern)
    {
        BladeParameters blade = layout.Dimensions.Blade;
        double inside = NickPoints(pattern).Min(point => pattern.Blade.Finished.SignedDistanceMm(point));
        if (!(inside >= NickInsideMm))
        {
            yield return Conflict.Of(
                $"A nail nick {Said.Length(blade.NickLengthMm)} long at a nail nick place of {Said.Length(blade.NickPlaceMm!.Value)} does not lie on the blade, whose spine begins to fall {Said.Length(layout.Blade.TipX - blade.PointMm!.Value)} in front of the pivot; move the nick to the straight spine or make it shorter.",
                "blade.nick_place_mm",
                "blade.nick_length_mm",
                "blade.point_mm"
            );
        }
    }

    private static IEnumerable<PatternConflict> NickOutOfHandle(PatternLayout layout, DrawnPattern pattern)
    {
        RigidMotion closed = Closed(layout);
        double covered = NickPoints(pattern)
            .Max(point => pattern.Handle.Finished.SignedDistanceMm(closed.Apply(point)));
        if (!(covered <= 0))
        {
            yield return Conflict.Of(
                $"Closed, the handle covers the nail nick by {Said.Length(covered)}; lower the handle height of {Said.Length(layout.Dimensions.Handle.HeightMm!.Value)} or the handle swell of {Said.Length(layout.Dimensions.Handle.SwellMm)}, or the nail nick width of {Said.Length(layout.Dimensions.Blade.NickWidthMm)}, or make the blade wider.",
                "blade.nick_width_mm",
                "handle.height_mm",
                "handle.swell_mm",
                "blade.width_mm"
            );
        }
    }

    private static RigidMotion Closed(PatternLayout layout) =>
        Knife.BladeAt(Angle.FromDegrees(layout.Dimensions.Readings.ClosedRestDeg));

    private static IEnumerable<Point> NickPoints(DrawnPattern pattern)
    {
        Edge round = pattern.Blade.Marks[0].Outline.Edges[0];
        return new[] { 0, 0.25, 0.5, 0.75, 1 }.Select(round.PointAt);
    }
}
