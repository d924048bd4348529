using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Measured.Solving;

/// <summary>One thing that was measured, and how it is read off a knife.</summary>
internal sealed record MeasuredValue(
    Stop Stop,
    string Name,
    bool IsAngle,
    double Measured,
    Func<Knife, StopReading, StopReadings, double> Read
)
{
    // An angle counts as what it raises at the end of a face of about this length.
    private const double FaceMm = 5;

    /// <summary>A difference in this value, in its own unit.</summary>
    public string Say(double off) => IsAngle ? Said.Degrees(new Angle(off / FaceMm).Degrees) : Said.Length(off);

    public double Of(Knife drawn, StopReadings readings) => Read(drawn, readings.At(Stop)!, readings);

    public static IEnumerable<MeasuredValue> In(MeasuredReadings measured)
    {
        if (measured.OpenHeightMm is { } open)
        {
            yield return new MeasuredValue(
                Stop.Open,
                "the height of the back open",
                IsAngle: false,
                open,
                (drawn, _, readings) => drawn.LiftMm(Angle.Zero, readings.OpenRotation)
            );
        }

        foreach (
            (Stop stop, double? lift, Angle? angle) in new[]
            {
                (Stop.HalfStop, measured.HalfStopMm, measured.HalfStopRestAngle),
                (Stop.Closed, measured.ClosedMm, measured.ClosedRestAngle),
            }
        )
        {
            if (lift is { } mm)
            {
                yield return new MeasuredValue(
                    stop,
                    $"the reading {Said.Of(stop)}",
                    IsAngle: false,
                    mm,
                    (_, reading, _) => reading.LiftMm
                );
            }

            if (angle is { } rest)
            {
                yield return new MeasuredValue(
                    stop,
                    $"the rest angle {Said.Of(stop)}",
                    IsAngle: true,
                    FaceMm * rest.Radians,
                    (_, reading, _) => FaceMm * reading.RestAngle.Radians
                );
            }
        }
    }
}
