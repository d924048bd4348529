using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Measured.Solving;

/// <summary>Says why readings cannot be explained.</summary>
internal static class MeasuredCheck
{
    // A search that is stopped by the tail ends this near to it.
    private const double AtTailMm = 0.005;

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
    public static MeasuredProblem NotExplained(OffsetSearch search, MeasuredReadings measured, double mostOffsetMm) =>
        new(
            MeasuredReasons.NotExplained,
            FoldsIntoTail(search.Readings, measured)
                ?? (
                    search.Nearest is { } nearest
                        ? $"No faces within {Said.Length(mostOffsetMm)} of the drawing make the knife read so; the nearest leaves {nearest.What} off by {nearest.Off}: read the dial again, measure the blade against the drawing, or draw it anew."
                        : $"No faces within {Said.Length(mostOffsetMm)} of the drawing make the knife read so, because they no longer meet the faces beside them; draw the blade as it is."
                )
        );

    /// <summary>Why a blade that is said to fold further than the spring behind the centre pin lets it is not explained.</summary>
    private static string? FoldsIntoTail(StopReadings nearest, MeasuredReadings measured)
    {
        StopReading closed = nearest.At(Stop.Closed)!;
        bool isAtTail = closed
            .Contacts.Concat(closed.NearMisses)
            .Any(contact => contact.SpringFace == SpringFace.Tail && contact.GapMm < AtTailMm);
        return isAtTail && measured.ClosedRestAngle is { } rest && rest > closed.RestAngle
            ? $"Closed at {Said.Degrees(rest.Degrees)} the blade would lie in the spring behind the centre pin, which it touches at {Said.Degrees(closed.RestAngle.Degrees)}: read the angle again, or draw blade and spring as they are."
            : null;
    }

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
