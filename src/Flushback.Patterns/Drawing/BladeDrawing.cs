using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Removal;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Drawing;

/// <summary>Draws the blade: the tang, and in front of it ricasso, choil, edge, point and spine.</summary>
internal static class BladeDrawing
{
    private const double RicassoRoundMm = 0.8;
    private const double ClipRoundMm = 3;

    /// <summary>The blade, counter-clockwise from the shoulder's top, and the face of each edge.</summary>
    public static (Outline Outline, ImmutableArray<BladeFace> Faces) Draw(PatternLayout layout)
    {
        Sketch<BladeFace> sketch = TangDrawing.Begin(layout);
        Ricasso(sketch, layout);
        Front(sketch, layout);
        return sketch.Close();
    }

    /// <summary>The nail nick, counter-clockwise: straight along the spine, round towards the edge.</summary>
    public static Outline Nick(PatternLayout layout)
    {
        BladeParameters blade = layout.Dimensions.Blade;
        double half = blade.NickLengthMm / 2;
        double top = layout.Blade.NickLowY + blade.NickWidthMm;
        double place = blade.NickPlaceMm!.Value;
        return Outline.FromVertices([
            new Vertex(place - half, top, blade.NickWidthMm / half),
            new Vertex(place + half, top),
        ]);
    }

    /// <summary>From the kick's round to where the edge begins.</summary>
    private static void Ricasso(Sketch<BladeFace> sketch, PatternLayout layout)
    {
        double edgeY = layout.Blade.EdgeY;
        double choil = layout.Dimensions.Blade.ChoilRadiusMm;
        Point leaves = layout.Tang.Kick + (layout.Blade.KickEnds * layout.Dimensions.Tang.KickRadiusMm);
        Point foot = layout.Blade.KickFoot;
        Point ends = new(layout.Blade.EdgeStartX - (2 * choil), edgeY);
        Edge rise = new(leaves, foot);
        Edge level = new(foot, ends);
        if (Fillet.Between(rise, level, RicassoRoundMm, convex: false) is { } round)
        {
            sketch.Line(round.Start, BladeFace.Ricasso).Add(round.End, round.Bulge, BladeFace.Ricasso);
        }
        else
        {
            sketch.Line(foot, BladeFace.Ricasso);
        }

        if (choil > 0)
        {
            sketch.Line(ends, BladeFace.Ricasso);
            sketch.Add(new Point(layout.Blade.EdgeStartX, edgeY), -1, BladeFace.Ricasso);
        }
    }

    private static void Front(Sketch<BladeFace> sketch, PatternLayout layout)
    {
        BladeLayout blade = layout.Blade;
        double spine = layout.Notch.SpineMm;
        Point edgeRises = new(blade.TipX - blade.SweepMm, blade.EdgeY);
        Point spineFalls = new(blade.TipX - blade.PointMm, spine);
        sketch.Line(edgeRises, BladeFace.Edge);
        if (blade.SweepMm > 0)
        {
            Edge sweep = Rounds.Leaving(edgeRises, new Vector(1, 0), blade.Tip);
            sketch.Add(sweep.End, sweep.Bulge, BladeFace.Edge);
        }

        Point end = layout.Notch.ShoulderRound + new Vector(0, layout.Dimensions.Tang.ShoulderRadiusMm);
        sketch.Along(Top(blade, spineFalls, end), BladeFace.Spine);
    }

    /// <summary>From the tip to the shoulder.</summary>
    private static ImmutableArray<Edge> Top(BladeLayout blade, Point spineFalls, Point shoulder)
    {
        if (blade.Shape.ClipHollow is { } hollow)
        {
            return Rounds.Of(
                [
                    new Rounds.Leg(new Edge(blade.Tip, spineFalls, -2 * hollow), ClipRoundMm),
                    new Rounds.Leg(new Edge(spineFalls, shoulder), 0),
                ],
                isClosed: false
            );
        }

        Edge fall = Rounds.Leaving(spineFalls, new Vector(1, 0), blade.Tip);
        return [fall.Reversed, new Edge(spineFalls, shoulder)];
    }
}
