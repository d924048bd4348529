using Flushback.Geometry;
using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Conflicts;

/// <summary>Whether the faces of the tang have room, and the nose reaches over them.</summary>
internal static class TangRules
{
    private const double LeastFaceMm = 1.5;
    private const double LeastLeverMm = 1;
    private const double LeastLeanDeg = 1;
    private const double LeastShoulderMm = 0.2;
    private const double LeastNoseBehindFrontMm = 0.2;
    private const double KickHeightOfRadius = 0.4;

    // Farther forward, in tang heights, nobody would take the projection for a kick.
    private const double FarthestKick = 2.4;

    /// <summary>The conflicts of the tang.</summary>
    public static IEnumerable<PatternConflict> Of(PatternLayout layout) =>
        [.. Kick(layout), .. Corners(layout), .. Faces(layout), .. Notch(layout), .. Nose(layout)];

    private static IEnumerable<PatternConflict> Kick(PatternLayout layout)
    {
        TangParameters tang = layout.Dimensions.Tang;
        double place = tang.KickPlaceMm!.Value;
        if (!(place <= FarthestKick * tang.HeightMm))
        {
            yield return Conflict.Of(
                $"The kick place of {Said.Length(place)} lies too far in front of a tang {Said.Length(tang.HeightMm)} high; set it to {Said.Length(FarthestKick * tang.HeightMm)} or less, or make the tang higher.",
                "tang.kick_place_mm",
                "tang.height_mm"
            );
        }

        double least = KickHeightOfRadius * tang.KickRadiusMm;
        if (!(tang.KickHeightMm >= least))
        {
            string height =
                layout.Given.Tang.KickHeightMm is null && layout.Given.Blade.WidthMm is { } width
                    ? $"A blade width of {Said.Length(width)} leaves a kick height of {Said.Length(tang.KickHeightMm!.Value)}"
                    : $"The kick height is {Said.Length(tang.KickHeightMm!.Value)}";
            yield return Conflict.Of(
                $"{height}, which a kick radius of {Said.Length(tang.KickRadiusMm)} does not fit into; make the kick at least {Said.Length(least)} high or its radius smaller.",
                layout.Given.Blade.WidthMm is null
                    ? ["tang.kick_height_mm", "tang.kick_radius_mm"]
                    : ["blade.width_mm", "tang.kick_height_mm", "tang.kick_radius_mm"]
            );
        }
    }

    /// <summary>Round tang only: the corners must lie off the pivot's foot, or nothing rests on them.</summary>
    private static IEnumerable<PatternConflict> Corners(PatternLayout layout)
    {
        TangParameters tang = layout.Dimensions.Tang;
        if (tang.HasHalfStop)
        {
            yield break;
        }

        if (!(-layout.Tang.OpenCorner.X >= LeastLeverMm))
        {
            yield return Conflict.Of(
                $"With a run rise of {Said.Length(tang.RunRiseMm)} and an open corner radius of {Said.Length(tang.OpenCornerRadiusMm)} the open corner lies too near to the pivot to hold the blade open; raise the run rise or make the radius smaller.",
                "tang.run_rise_mm",
                "tang.open_corner_radius_mm"
            );
        }

        if (!(-layout.Tang.ClosedCorner.X >= LeastLeverMm))
        {
            double closed = layout.Dimensions.Readings.ClosedMm;
            yield return Conflict.Of(
                $"With a run rise of {Said.Length(tang.RunRiseMm)}, a closed reading of {Said.Length(closed)} and a closed corner radius of {Said.Length(tang.ClosedCornerRadiusMm)} the closed corner lies too near to the pivot to hold the blade closed; raise the run rise, or lower the reading or the radius.",
                "tang.run_rise_mm",
                "readings.closed_mm",
                "tang.closed_corner_radius_mm"
            );
        }
    }

    private static IEnumerable<PatternConflict> Faces(PatternLayout layout)
    {
        TangParameters tang = layout.Dimensions.Tang;
        TangLayout at = layout.Tang;
        double least = LeastFaceMm + (2 * tang.ReliefLandMm);
        double halfStop = at.OpenCorner.DistanceTo(at.ClosedCorner);
        bool upright = at.OpenCorner.Y > at.ClosedCorner.Y;
        if (tang.HasHalfStop && !(upright && halfStop >= least))
        {
            yield return Conflict.Of(
                $"A tang height of {Said.Length(tang.HeightMm)} leaves too little of the half-stop face between an open corner radius of {Said.Length(tang.OpenCornerRadiusMm)} and a closed corner radius of {Said.Length(tang.ClosedCornerRadiusMm)}; make the tang higher or the radii smaller.",
                "tang.height_mm",
                "tang.open_corner_radius_mm",
                "tang.closed_corner_radius_mm"
            );
        }

        double flat = layout.Notch.Shoulder.Meets(at.OpenFlat).X - tang.NotchRadiusMm - at.OpenCorner.X;
        if (!(flat >= least))
        {
            yield return Conflict.Of(
                $"A tang length of {Said.Length(tang.LengthMm!.Value)} leaves too little of the open flat between the notch radius of {Said.Length(tang.NotchRadiusMm)} and the open corner; make the tang longer.",
                "tang.length_mm",
                "tang.notch_radius_mm"
            );
        }
    }

    private static IEnumerable<PatternConflict> Notch(PatternLayout layout)
    {
        TangParameters tang = layout.Dimensions.Tang;
        NotchLayout notch = layout.Notch;
        double endFace = layout.Dimensions.Spring.EndFaceDeg;
        if (!(endFace - tang.ShoulderDeg >= LeastLeanDeg))
        {
            yield return Conflict.Of(
                $"A shoulder angle of {Said.Degrees(tang.ShoulderDeg)} does not lean over an end face angle of {Said.Degrees(endFace)}, so the nose would jam in the notch's corner; make the shoulder angle smaller than the end face angle by a degree or more.",
                "tang.shoulder_deg",
                "spring.end_face_deg"
            );
            yield break;
        }

        Point roundEnds = notch.ShoulderRound + (notch.ShoulderNormal * tang.ShoulderRadiusMm);
        double shoulder = roundEnds.DistanceTo(notch.Shoulder.Meets(layout.Tang.OpenFlat)) - tang.NotchRadiusMm;
        Point noseRoundEnds = notch.NoseRound + (notch.EndFaceNormal * layout.Dimensions.Spring.NoseRadiusMm);
        double onEndFace = notch.ShoulderContact.Y - noseRoundEnds.Y;
        if (!(shoulder >= LeastShoulderMm && onEndFace >= LeastShoulderMm))
        {
            yield return Conflict.Of(
                $"An open flat depth of {Said.Length(tang.OpenFlatDepthMm!.Value)} leaves no straight shoulder between a shoulder radius of {Said.Length(tang.ShoulderRadiusMm)}, a notch radius of {Said.Length(tang.NotchRadiusMm)} and a nose radius of {Said.Length(layout.Dimensions.Spring.NoseRadiusMm)}; make the flat deeper or the radii smaller.",
                "tang.open_flat_depth_mm",
                "tang.shoulder_radius_mm",
                "tang.notch_radius_mm",
                "spring.nose_radius_mm"
            );
        }

        double nose = layout.Dimensions.Spring.NoseDepthMm;
        if (!(notch.ShoulderContact.Y <= layout.Spring.FinishedBack.HeightMm - LeastUnderBackMm))
        {
            yield return Conflict.Of(
                $"An open flat depth of {Said.Length(tang.OpenFlatDepthMm!.Value)} puts the shoulder's top over a spring {Said.Length(nose)} deep at the nose; make the flat less deep or the spring deeper at the nose.",
                "tang.open_flat_depth_mm",
                "spring.nose_depth_mm"
            );
        }
    }

    private const double LeastUnderBackMm = 0.05;

    private static IEnumerable<PatternConflict> Nose(PatternLayout layout)
    {
        PatternParameters p = layout.Dimensions;
        NotchLayout notch = layout.Notch;
        double farthest = layout.Tang.FarthestContactMm(p) + NotchLayout.LeastOverhangMm;
        if (!(notch.NoseRound.X >= farthest))
        {
            yield return Conflict.Of(
                $"With a tang length of {Said.Length(p.Tang.LengthMm!.Value)} the straight underside of the nose ends {Said.Length(notch.NoseRound.X)} in front of the pivot, but a tang height of {Said.Length(p.Tang.HeightMm)} asks for {Said.Length(farthest)}; make the tang {Said.Length(p.Tang.LengthMm.Value + farthest - notch.NoseRound.X)} long or more, or lower.",
                "tang.length_mm",
                "tang.height_mm"
            );
        }

        double front = p.Handle.FrontMm!.Value;
        if (!(notch.NoseReachMm <= front - LeastNoseBehindFrontMm))
        {
            yield return Conflict.Of(
                $"With a tang length of {Said.Length(p.Tang.LengthMm!.Value)} the nose reaches {Said.Length(notch.NoseReachMm)} in front of the pivot, out of a handle front of {Said.Length(front)}; make the tang shorter or the handle front longer.",
                "tang.length_mm",
                "handle.front_mm"
            );
        }

        double rear = layout.Tang.RearMm(p);
        if (!(rear <= front - LeastNoseBehindFrontMm))
        {
            yield return Conflict.Of(
                $"Closed, the tang reaches {Said.Length(rear)} in front of the pivot, out of a handle front of {Said.Length(front)}; lengthen the handle front, or lower the {(p.Tang.HasHalfStop ? "tang height" : "tang height or the run rise")}.",
                p.Tang.HasHalfStop
                    ? ["handle.front_mm", "tang.height_mm"]
                    : ["handle.front_mm", "tang.height_mm", "tang.run_rise_mm"]
            );
        }
    }
}
