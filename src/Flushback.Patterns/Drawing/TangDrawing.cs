using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Drawing;

/// <summary>Draws the tang: shoulder, notch, faces, corners, kick.</summary>
internal static class TangDrawing
{
    /// <summary>A sketch that has come from the spine over the shoulder around the tang to the end of the kick.</summary>
    /// <param name="layout">Where everything lies.</param>
    public static Sketch<BladeFace> Begin(PatternLayout layout)
    {
        TangParameters tang = layout.Dimensions.Tang;
        NotchLayout notch = layout.Notch;
        TangLayout at = layout.Tang;
        Vector up = new(0, 1);
        Sketch<BladeFace> sketch = new(notch.ShoulderRound + (up * tang.ShoulderRadiusMm));
        sketch.Round(notch.ShoulderRound, tang.ShoulderRadiusMm, up, notch.ShoulderNormal, BladeFace.Shoulder);

        Point corner = notch.Shoulder.Meets(at.OpenFlat);
        Vector upShoulder = notch.ShoulderNormal.Right;
        Vector rearward = at.OpenFlat.Normal.Left;
        sketch.Line(corner + (upShoulder * tang.NotchRadiusMm), BladeFace.Shoulder);
        if (tang.NotchRadiusMm > 0)
        {
            // All around the corner through the metal: a full turn less the angle of the notch.
            double open = Math.Atan2(upShoulder.Cross(rearward), upShoulder.Dot(rearward));
            sketch.Add(
                corner + (rearward * tang.NotchRadiusMm),
                -Math.Tan((Math.Tau - open) / 4),
                BladeFace.NotchCorner
            );
        }

        sketch.Face(
            at.OpenCorner + (at.OpenFlat.Normal * tang.OpenCornerRadiusMm),
            tang.OpenReliefMm,
            tang.ReliefLandMm,
            BladeFace.OpenFlat
        );
        Rear(sketch, tang, at);
        sketch.Face(at.KickContact, tang.ClosedReliefMm, tang.ReliefLandMm, BladeFace.ClosedFace);
        return sketch.Round(at.Kick, tang.KickRadiusMm, at.Closed.Normal, layout.Blade.KickEnds, BladeFace.Kick);
    }

    /// <summary>From the open corner to the end of the closed corner.</summary>
    private static void Rear(Sketch<BladeFace> sketch, TangParameters tang, TangLayout at)
    {
        double openRadius = tang.OpenCornerRadiusMm;
        double closedRadius = tang.ClosedCornerRadiusMm;
        if (tang.HasHalfStop)
        {
            Vector rear = at.HalfStop.Normal;
            sketch.Round(at.OpenCorner, openRadius, at.OpenFlat.Normal, rear, BladeFace.OpenCorner);
            sketch.Face(
                at.ClosedCorner + (rear * closedRadius),
                tang.HalfStopReliefMm,
                tang.ReliefLandMm,
                BladeFace.HalfStopFace
            );
            sketch.Round(at.ClosedCorner, closedRadius, rear, at.Closed.Normal, BladeFace.ClosedCorner);
            return;
        }

        Vector runStarts = (at.OpenCorner - Point.Origin).Normalized;
        Vector runEnds = (at.ClosedCorner - Point.Origin).Normalized;
        sketch.Round(at.OpenCorner, openRadius, at.OpenFlat.Normal, runStarts, BladeFace.OpenCorner);
        sketch.Round(Point.Origin, at.RunRadiusMm, runStarts, runEnds, BladeFace.Run);
        sketch.Round(at.ClosedCorner, closedRadius, runEnds, at.Closed.Normal, BladeFace.ClosedCorner);
    }
}
