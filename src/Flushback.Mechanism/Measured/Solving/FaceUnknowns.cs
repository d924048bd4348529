using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Measured.Solving;

/// <summary>What may be off the drawing: the open flat level, and each face that was read, level or at its ends.</summary>
internal sealed class FaceUnknowns
{
    private readonly Knife _drawn;
    private readonly StopReadings _readings;
    private readonly ImmutableArray<Unknown> _unknowns;

    public FaceUnknowns(Knife drawn, StopReadings readings, MeasuredReadings measured)
    {
        (_drawn, _readings) = (drawn, readings);
        _unknowns = [.. In(measured)];
    }

    /// <summary>How many amounts are to be found.</summary>
    public int Count => _unknowns.Length;

    /// <summary>The drawn knife with its faces off by given amounts; null where they no longer meet what lies beside them.</summary>
    public Knife? KnifeWith(double[] amounts)
    {
        Knife? knife = _drawn;
        foreach (FaceOffset offset in OffsetsOf(amounts))
        {
            knife =
                knife is not null && DepthPlaces.Of(_drawn, _readings, Site.On(offset.Face)) is { } places
                    ? FaceShift.Of(knife, places, offset)
                    : null;
        }

        return knife;
    }

    private static IEnumerable<Unknown> In(MeasuredReadings measured)
    {
        yield return new Unknown(BladeFace.OpenFlat, 1, 1);
        foreach (
            (BladeFace face, double? lift, Angle? angle) in new[]
            {
                (BladeFace.HalfStopFace, measured.HalfStopMm, measured.HalfStopRestAngle),
                (BladeFace.ClosedFace, measured.ClosedMm, measured.ClosedRestAngle),
            }
        )
        {
            if (angle is not null)
            {
                yield return new Unknown(face, 1, 0);
                yield return new Unknown(face, 0, 1);
            }
            else if (lift is not null)
            {
                yield return new Unknown(face, 1, 1);
            }
        }
    }

    /// <summary>The amounts as offsets, one for each face that may be off.</summary>
    public ImmutableArray<FaceOffset> OffsetsOf(double[] amounts) =>
        [
            .. _unknowns
                .Select((unknown, k) => (unknown, Amount: amounts[k]))
                .GroupBy(pair => pair.unknown.Face)
                .Select(face => new FaceOffset(
                    face.Key,
                    face.Sum(pair => pair.unknown.Front * pair.Amount),
                    face.Sum(pair => pair.unknown.Rear * pair.Amount)
                )),
        ];

    /// <summary>Something that may be off the drawing, and how much of it counts at the front and at the rear of its face.</summary>
    private readonly record struct Unknown(BladeFace Face, double Front, double Rear);
}
