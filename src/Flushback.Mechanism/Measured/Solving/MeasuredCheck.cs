using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;

namespace Flushback.Mechanism.Measured.Solving;

/// <summary>Says why readings cannot be explained.</summary>
internal static class MeasuredCheck
{
    /// <summary>What is wrong with readings before anything is solved; null when nothing is.</summary>
    public static MeasuredProblem? Refuse(MeasuredReadings measured, StopReadings drawn)
    {
        double?[] values =
        [
            measured.HalfStopMm,
            measured.ClosedMm,
            measured.OpenHeightMm,
            measured.HalfStopRestAngle?.Radians,
            measured.ClosedRestAngle?.Radians,
        ];
        if (!values.Any(value => value is not null) || values.Any(value => value is { } v && !double.IsFinite(v)))
        {
            return new MeasuredProblem(
                MeasuredReasons.NothingMeasured,
                "Nothing was measured that could be explained; give at least one reading of the dial, as a number."
            );
        }

        return NoStop(Stop.HalfStop, measured.HalfStopMm, measured.HalfStopRestAngle, drawn)
            ?? NoStop(Stop.Closed, measured.ClosedMm, measured.ClosedRestAngle, drawn);
    }

    /// <summary>Why a search has found no offsets.</summary>
    public static MeasuredProblem NotExplained(OffsetSearch search, double mostOffsetMm) =>
        new(
            MeasuredReasons.NotExplained,
            search.Nearest is { } nearest
                ? $"No faces within {Said.Length(mostOffsetMm)} of the drawing make the knife read so; the nearest leaves {nearest.What} off by {nearest.Off}: read the dial again, measure the blade against the drawing, or draw it anew."
                : $"No faces within {Said.Length(mostOffsetMm)} of the drawing make the knife read so, because they no longer meet the faces beside them; draw the blade as it is."
        );

    private static MeasuredProblem? NoStop(Stop stop, double? lift, Angle? angle, StopReadings drawn)
    {
        if (lift is null && angle is null)
        {
            return null;
        }

        return drawn.At(stop) switch
        {
            null => new MeasuredProblem(
                MeasuredReasons.NoSuchStop,
                $"A reading was given {Said.Of(stop)}, but the blade as drawn has no stop there; leave the reading out, or say that the knife has one."
            ),
            { Rests: false } => new MeasuredProblem(
                MeasuredReasons.NoSuchStop,
                $"A reading was given {Said.Of(stop)}, but the blade as drawn does not come to rest there; draw the blade as it is, or leave the reading out."
            ),
            _ => null,
        };
    }
}
