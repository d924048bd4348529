using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Conflicts;

/// <summary>Pins along the handle: whether spring and back have room between them.</summary>
internal static class PinRules
{
    private const double LeastBellyMm = 4;
    private const double LeastSpanMm = 8;

    // A back that turns by more than this from the tang to the butt is no gentle curve.
    private const double MostTurn = 0.4;

    /// <summary>The conflicts of places along the handle.</summary>
    public static IEnumerable<PatternConflict> Of(PatternLayout layout)
    {
        PatternParameters p = layout.Dimensions;
        double centre = p.Pins.CentreBehindMm!.Value;
        double rear = p.Pins.RearBehindMm!.Value;
        double padEnd = p.Spring.PadEndMm!.Value;
        double kick = p.Tang.KickPlaceMm!.Value;
        if (!(padEnd >= kick + LeastPadBehindKickMm))
        {
            yield return Conflict.Of(
                $"The kick bears {Said.Length(kick)} behind the pivot when closed, but the straight underside of the nose ends {Said.Length(padEnd)} behind it; set the pad end to {Said.Length(kick + LeastPadBehindKickMm)} or more, or the kick place nearer to the pivot.",
                "spring.pad_end_mm",
                "tang.kick_place_mm"
            );
        }

        double nearest = padEnd + layout.Rear.HalfBossMm + LeastBellyMm;
        if (!(centre >= nearest))
        {
            yield return Conflict.Of(
                $"The centre pin lies {Said.Length(centre)} behind the pivot and the pad end {Said.Length(padEnd)}, which leaves no length for a belly between them; set the centre pin place to {Said.Length(nearest)} or more, or the pad end nearer to the pivot.",
                "pins.centre_behind_mm",
                "spring.pad_end_mm"
            );
        }

        if (!(rear >= centre + layout.Rear.HalfBossMm + LeastSpanMm))
        {
            yield return Conflict.Of(
                $"The rear pin lies {Said.Length(rear)} behind the pivot and the centre pin {Said.Length(centre)}, too near to each other to hold the spring; set the rear pin place to {Said.Length(centre + layout.Rear.HalfBossMm + LeastSpanMm)} or more, or the centre pin place to less.",
                "pins.rear_behind_mm",
                "pins.centre_behind_mm"
            );
        }

        BackLine line = layout.Handle.Line;
        if (!line.IsStraight && !((line.LevelToX + p.Handle.ClosedLengthMm) / line.RadiusMm <= MostTurn))
        {
            yield return Conflict.Of(
                $"A back drop of {Said.Length(p.Handle.BackDropMm)} at a rear pin place of {Said.Length(rear)} bends the back too sharply behind the tang; lower the back drop or move the rear pin to the rear.",
                "handle.back_drop_mm",
                "pins.rear_behind_mm"
            );
        }
    }

    /// <summary>How far the straight underside goes on behind the kick.</summary>
    public const double LeastPadBehindKickMm = 0.5;
}
