using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Drawing;

/// <summary>Draws the spring where it lies with the blade open, unbent.</summary>
/// <remarks>
/// On its pins, bent by the open blade, the finished back lies along the handle's line. Unbent, with the nose on the flat, the
/// part behind the centre pin is turned about that pin by the preload's angle: so it is drawn, and so it is cut.
/// </remarks>
internal static class SpringDrawing
{
    internal const double BellyRoundMm = 8;
    private const double TailRoundMm = 0.5;
    internal const double SoftRoundMm = 200;

    /// <summary>The spring, counter-clockwise from the nose, and the face of each edge.</summary>
    public static (Outline Outline, ImmutableArray<SpringFace> Faces) Draw(PatternLayout layout)
    {
        NotchLayout notch = layout.Notch;
        Vector down = new(0, -1);
        double radius = layout.Dimensions.Spring.NoseRadiusMm;
        Point top = notch.EndFace.Meets(BearingFace.Level(layout.Spring.DialPoint.Y));
        Point padFront = notch.NoseRound + (down * radius);

        Sketch<SpringFace> sketch = new(padFront);
        sketch.Round(notch.NoseRound, radius, down, notch.EndFaceNormal, SpringFace.NoseCorner);
        sketch.Line(top, SpringFace.EndFace);
        foreach (Edge edge in Rounds.Of(FromNoseToNose(layout, top, padFront), isClosed: false))
        {
            sketch.Along([edge], FaceOf(edge, layout.Spring.CentrePin.X));
        }

        return sketch.Close();
    }

    private static SpringFace FaceOf(Edge edge, double pinX) =>
        edge.OutwardNormalAt(0.5).Y switch
        {
            > 0.5 => SpringFace.Back,
            < -0.2 => edge.PointAt(0.5).X > pinX ? SpringFace.Underside : SpringFace.Tail,
            _ => SpringFace.Unknown,
        };

    /// <summary>Back, rear end and underside, from the end face's top to the nose's round.</summary>
    private static Rounds.Leg[] FromNoseToNose(PatternLayout layout, Point top, Point padFront)
    {
        RigidMotion asDrawn = layout.Spring.AsDrawn;
        PatternParameters p = layout.Dimensions;
        double pinX = layout.Spring.CentrePin.X;
        double underPin = layout.Rear.UnderPinY;

        ImmutableArray<Edge> rear = [.. Rear(layout).Select(asDrawn.Apply)];
        Point curves = new(-p.Spring.PadEndMm!.Value, top.Y);
        Point underRear = asDrawn.Apply(layout.Rear.BossRear);
        Vector rearBoss = asDrawn.Apply(new Vector(0, 1));
        Point underMiddle = BearingFace.Through(underRear, rearBoss).Meets(BearingFace.Level(underPin));
        Point bossFront = new(pinX + layout.Rear.HalfBossMm, underPin);
        // Without a preload both halves of the boss are one line.
        underMiddle =
            double.IsFinite(underMiddle.X) && layout.Spring.FreeTurn.Radians > 1e-9 ? underMiddle : new(pinX, underPin);
        Edge belly = Belly(p, bossFront, padFront);
        return
        [
            new(new Edge(top, curves), 0),
            new(Rounds.Leaving(curves, new Vector(-1, 0), rear[0].Start), SoftRoundMm),
            .. rear.Take(rear.Length - 1).Select(edge => new Rounds.Leg(edge, 0)),
            new(rear[^1], TailRoundMm),
            new(new Edge(rear[^1].End, underRear), BellyRoundMm),
            new(new Edge(underRear, underMiddle), 0),
            new(new Edge(underMiddle, bossFront), BellyRoundMm),
            new(belly, BellyRoundMm),
            new(new Edge(belly.End, padFront), 0),
        ];
    }

    /// <summary>From above the centre pin over the butt to the underside's rear end, spring on its pins.</summary>
    private static ImmutableArray<Edge> Rear(PatternLayout layout)
    {
        PatternParameters p = layout.Dimensions;
        double butt = layout.Blade.ButtX;
        double pinX = layout.Spring.CentrePin.X;
        Point underRear = layout.Rear.Underside;

        BackLine line = layout.Spring.FinishedBack.Out(p.Spring.RearStockMm);
        Edge back = line.From(pinX, butt)[^1];
        Edge end = new(back.End, back.End - new Vector(0, layout.Handle.ButtHeightMm));
        ImmutableArray<Edge> corner = Rounds.Of(
            [new(back, HandleDrawing.ButtRadiusMm(layout.Handle)), new(end, 0)],
            isClosed: false
        );
        Edge underside = new(layout.Rear.BossRear, underRear);
        Point onButt = BearingFace
            .Through(underRear, underside.Chord.Left.Normalized)
            .Meets(new BearingFace(new Vector(-1, 0), -butt));
        if (corner.Length < 3 || onButt.Y <= corner[1].End.Y)
        {
            return [.. corner[..^1], Rounds.Between(corner[^1], corner[^1].Start, onButt)];
        }

        return [corner[0], Rounds.Between(corner[1], corner[1].Start, OnCircle(corner[1], underside))];
    }

    /// <summary>Where a line, prolonged, leaves the circle of an arc.</summary>
    private static Point OnCircle(Edge arc, Edge line)
    {
        Vector along = line.Chord.Normalized;
        Vector from = line.Start - arc.Centre;
        double middle = -from.Dot(along);
        double half = Math.Sqrt(Math.Max((arc.RadiusMm * arc.RadiusMm) - (from + (along * middle)).LengthSquared, 0));
        return line.Start + (along * (middle + half));
    }

    /// <summary>The hollow belly, to a corner so placed that the straight underside is left as long as wanted.</summary>
    internal static Edge Belly(PatternParameters p, Point bossFront, Point padFront)
    {
        double padEnd = -p.Spring.PadEndMm!.Value;
        Point corner = new(padEnd, padFront.Y);
        Edge belly = default;
        for (int i = 0; i < CornerSteps; i++)
        {
            belly = new Edge(bossFront, corner, -2 * p.Spring.BellyReliefMm / bossFront.DistanceTo(corner));
            Edge pad = new(corner, padFront);
            ImmutableArray<Edge> rounded = Rounds.Of([new(belly, BellyRoundMm), new(pad, 0)], isClosed: false);
            corner -= new Vector(rounded[^1].Start.X - padEnd, 0);
        }

        return belly;
    }

    // The round's length hardly depends on where the corner lies: each step gains three digits and more.
    private const int CornerSteps = 8;
}
