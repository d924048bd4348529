using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Catalogue.Designs;

/// <summary>Draws a blade with its tang from its dimensions.</summary>
internal static class BladeDrawing
{
    /// <summary>The blade at blade angle 0, counter-clockwise from the shoulder's top, with the face of each edge.</summary>
    public static (Outline Outline, ImmutableArray<BladeFace> Faces) Draw(KnifeDesign design)
    {
        FaceSketch<BladeFace> sketch = new();
        FaceLine openFlat = AddNotch(sketch, design);
        FaceLine closed = ClosedFace(design);
        if (design.Tang.HasHalfStop)
        {
            AddHalfStop(sketch, design.Tang, openFlat, HalfStopFace(design), closed);
        }
        else
        {
            AddRun(sketch, design.Tang, openFlat, closed);
        }

        AddFront(sketch, design, closed);
        return sketch.Finish();
    }

    private static FaceLine HalfStopFace(KnifeDesign design)
    {
        double height = design.Spring.UndersideMm + design.Tang.HalfStopReadingMm;
        return FaceLine.Through(new Point(-height, 0), Angle.FromDegrees(-90 - design.Tang.HalfStopTiltDeg));
    }

    private static FaceLine ClosedFace(KnifeDesign design)
    {
        double height = design.Spring.UndersideMm + design.Tang.ClosedReadingMm;
        return FaceLine.Through(new Point(0, -height), Angle.FromDegrees(-design.Tang.ClosedTiltDeg));
    }

    /// <summary>Adds shoulder, inner corner and the start of the open flat; hands the flat over.</summary>
    private static FaceLine AddNotch(FaceSketch<BladeFace> sketch, KnifeDesign design)
    {
        SpringDesign spring = design.Spring;
        BladeDesign blade = design.Blade;
        double underside = spring.UndersideMm;

        // Shoulder and end face are straight: they are nearest at the nose or at the lower of their two tops.
        double lean = 1 / Math.Tan(Angle.FromDegrees(blade.UndercutDeg).Radians);
        double common = Math.Min(blade.ShoulderMm, spring.DepthMm + spring.FrontStockMm);
        double endFaceAtCommon = SpringDrawing.EndFaceX(spring, underside + common);
        double foot = blade.ShoulderGapMm + Math.Max(spring.ReachMm, endFaceAtCommon + (common * lean));
        FaceLine shoulder = FaceLine.Through(new Point(foot, underside), Angle.FromDegrees(-blade.UndercutDeg));
        Point top = new(foot - (blade.ShoulderMm * lean), underside + blade.ShoulderMm);

        FaceLine openFlat = OpenFlat(design, foot);
        Point corner = shoulder.Meets(openFlat);
        sketch.AddRounded(top, blade.ShoulderRadiusMm, BladeFace.Shoulder, BladeFace.Shoulder);
        Point flatStart = corner;
        if (blade.CornerReliefMm > 0)
        {
            // Deep enough to swallow the corner, which lies half the chord over tan of half the angle behind it.
            double bulge = -1.25 / Math.Tan(Angle.FromDegrees(blade.UndercutDeg / 2).Radians);
            sketch.Add(corner - (shoulder.Along * blade.CornerReliefMm), BladeFace.NotchCorner, bulge);
            flatStart = corner + (openFlat.Along * blade.CornerReliefMm);
        }

        sketch.AddRounded(flatStart, 0, BladeFace.NotchCorner, BladeFace.OpenFlat, design.Tang.OpenRelief);
        return openFlat;
    }

    private static FaceLine OpenFlat(KnifeDesign design, double notchX)
    {
        TangDesign tang = design.Tang;
        double height = design.Spring.UndersideMm - tang.OpenDropMm;

        // The flat's higher end bears: the open corner when it rises to the rear, else the end at the notch.
        double bearsAtX = notchX;
        if (tang.OpenTiltDeg >= 0)
        {
            FaceLine level = FaceLine.Through(new Point(0, height), new Angle(Math.PI));
            bearsAtX = tang.HasHalfStop ? level.Meets(HalfStopFace(design)).X : -tang.RunStartMm;
        }

        return FaceLine.Through(new Point(bearsAtX, height), Angle.FromDegrees(180 - tang.OpenTiltDeg));
    }

    private static void AddHalfStop(
        FaceSketch<BladeFace> sketch,
        TangDesign tang,
        FaceLine openFlat,
        FaceLine halfStop,
        FaceLine closed
    )
    {
        sketch.AddRounded(
            openFlat.Meets(halfStop),
            tang.OpenCornerRadiusMm,
            BladeFace.OpenCorner,
            BladeFace.HalfStopFace,
            tang.HalfStopRelief
        );
        sketch.AddRounded(
            halfStop.Meets(closed),
            tang.ClosedCornerRadiusMm,
            BladeFace.ClosedCorner,
            BladeFace.ClosedFace,
            tang.ClosedRelief
        );
    }

    private static void AddRun(FaceSketch<BladeFace> sketch, TangDesign tang, FaceLine openFlat, FaceLine closed)
    {
        double radius = (openFlat.AtX(-tang.RunStartMm) - Point.Origin).Length;
        double openRound = tang.OpenCornerRadiusMm;
        double closedRound = tang.ClosedCornerRadiusMm;
        Vector openCentre = openFlat.RoundCentre(radius, openRound, ahead: true) - Point.Origin;
        Vector closedCentre = closed.RoundCentre(radius, closedRound, ahead: false) - Point.Origin;
        Point runStart = Point.Origin + (openCentre.Normalized * radius);
        Point runEnd = Point.Origin + (closedCentre.Normalized * radius);
        if (openRound > 0)
        {
            Point leavesFlat = Point.Origin + openCentre + (openFlat.Along.Right * openRound);
            sketch.Add(leavesFlat, BladeFace.OpenCorner, BulgeOver(openFlat.Along.Right, openCentre));
        }

        sketch.Add(runStart, BladeFace.Run, BulgeOver(openCentre, closedCentre));
        Point meetsClosed = runEnd;
        if (closedRound > 0)
        {
            meetsClosed = Point.Origin + closedCentre + (closed.Along.Right * closedRound);
            sketch.Add(runEnd, BladeFace.ClosedCorner, BulgeOver(closedCentre, closed.Along.Right));
        }

        sketch.AddRounded(meetsClosed, 0, BladeFace.ClosedCorner, BladeFace.ClosedFace, tang.ClosedRelief);
    }

    /// <summary>Bulge of the counter-clockwise arc between two directions from its centre.</summary>
    private static double BulgeOver(Vector from, Vector to) =>
        Math.Tan((to.Direction - from.Direction).Positive.Radians / 4);

    /// <summary>Adds kick, choil, edge, tip and spine.</summary>
    private static void AddFront(FaceSketch<BladeFace> sketch, KnifeDesign design, FaceLine closed)
    {
        BladeDesign blade = design.Blade;
        double kick = design.Tang.KickMm;
        double length = blade.LengthMm;
        double spine = design.Spring.UndersideMm + blade.ShoulderMm;
        sketch.AddRounded(closed.AtX(kick), design.Tang.KickRadiusMm, BladeFace.Kick, BladeFace.Kick);
        sketch.Add(new Point(kick + 1.4, 0.6 - blade.EdgeMm), BladeFace.Edge, -0.5);
        sketch.Add(new Point(kick + 3, -blade.EdgeMm), BladeFace.Edge);
        sketch.Add(new Point(0.7 * length, -blade.EdgeMm), BladeFace.Edge, 0.08);
        sketch.Add(new Point(length, blade.TipMm), BladeFace.Spine, 0.06);
        sketch.Add(new Point(0.55 * length, spine), BladeFace.Spine);
    }
}
