using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Catalogue.Designs;

/// <summary>Draws a backspring from its dimensions.</summary>
internal static class SpringDrawing
{
    /// <summary>Metal around a pin, below its centre.</summary>
    private const double BelowPinMm = 2;

    /// <summary>The spring, counter-clockwise from the nose, with the face of each edge.</summary>
    public static (Outline Outline, ImmutableArray<SpringFace> Faces) Draw(SpringDesign spring)
    {
        double back = spring.UndersideMm + spring.DepthMm;
        double front = back + spring.FrontStockMm;
        double tailEnd = spring.RearPin.X - 4;
        double pinLow = spring.CentrePin.Y - BelowPinMm;
        Point padEnd = new(-spring.PadEndMm, spring.UndersideMm);
        Point bellyEnd = new(spring.CentrePin.X + 4, pinLow);

        FaceSketch<SpringFace> sketch = new();
        sketch.AddRounded(
            new Point(spring.ReachMm, spring.UndersideMm),
            spring.NoseRadiusMm,
            SpringFace.NoseCorner,
            SpringFace.EndFace
        );
        sketch.Add(new Point(EndFaceX(spring, front), front), SpringFace.Back);
        if (spring.FrontStockMm != 0)
        {
            sketch.Add(new Point(-8, front), SpringFace.Back);
            sketch.Add(new Point(spring.CentrePin.X - 6, back), SpringFace.Back);
        }

        sketch.Add(new Point(tailEnd, back), SpringFace.Back);
        sketch.Add(new Point(tailEnd, spring.RearPin.Y - BelowPinMm), SpringFace.Tail);
        sketch.Add(new Point(spring.CentrePin.X - 4, pinLow), SpringFace.Underside);

        // The belly is hollow: an arc that turns clockwise on the way to the nose.
        sketch.Add(bellyEnd, SpringFace.Underside, -2 * spring.BellyMm / bellyEnd.DistanceTo(padEnd));
        sketch.AddRounded(padEnd, 0, SpringFace.Underside, SpringFace.Underside, spring.PadRelief);
        return sketch.Finish();
    }

    /// <summary>Where the end face lies at a height.</summary>
    public static double EndFaceX(SpringDesign spring, double y) =>
        spring.ReachMm - ((y - spring.UndersideMm) / Math.Tan(Angle.FromDegrees(spring.EndFaceDeg).Radians));
}
