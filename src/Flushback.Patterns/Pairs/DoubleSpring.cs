using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Drawing;
using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Pairs;

/// <summary>Draws a spring with a nose at either end, held by one centre pin between them.</summary>
/// <remarks>
/// Each half is drawn in the frame of its own blade, where its nose lies unbent on the open flat. Unbent as a whole the halves
/// are turned against each other about the centre pin by what both preloads turn together; they meet on the middle of that turn.
/// </remarks>
internal static class DoubleSpring
{
    /// <summary>The spring in the frame of the one blade, and what its edges are to that blade.</summary>
    /// <param name="near">The blade in whose frame it is drawn.</param>
    /// <param name="far">The blade at the other end.</param>
    /// <param name="farToNear">From the far blade's frame to the near one's, mirrored.</param>
    public static (Outline Outline, ImmutableArray<SpringFace> Faces) Draw(
        PatternLayout near,
        PatternLayout far,
        RigidMotion farToNear
    )
    {
        Angle turn = near.Spring.FreeTurn + far.Spring.FreeTurn;
        RigidMotion farTurned = farToNear.Then(RigidMotion.RotationAbout(near.Spring.CentrePin, turn));
        double pinX = near.Spring.CentrePin.X;
        List<(Edge Edge, SpringFace Face)> edges = [.. Half(near, turn)];
        edges.AddRange(
            Half(far, turn)
                .Select(piece => (Edge: farTurned.Apply(piece.Edge).Reversed, piece.Face))
                .Reverse()
                .Select(piece => (piece.Edge, FarFace(piece.Edge)))
        );
        Outline outline = Outline.FromVertices([
            .. edges.Select(piece => new Vertex(piece.Edge.Start, piece.Edge.Bulge)),
        ]);
        return (outline, [.. edges.Select(piece => piece.Face)]);

        SpringFace FarFace(Edge edge) =>
            edge.OutwardNormalAt(0.5).Y switch
            {
                > 0.5 => SpringFace.Back,
                < -0.2 when edge.PointAt(0.5).X < pinX => SpringFace.Tail,
                _ => SpringFace.Unknown,
            };
    }

    /// <summary>From below the centre pin over the nose to above the pin, counter-clockwise, in the half's own frame.</summary>
    private static IEnumerable<(Edge Edge, SpringFace Face)> Half(PatternLayout layout, Angle turn)
    {
        PatternParameters p = layout.Dimensions;
        NotchLayout notch = layout.Notch;
        Point pin = layout.Spring.CentrePin;
        Vector upward = new Vector(0, 1).Rotated(turn * 0.5);
        double under = pin.Y - layout.Rear.UnderPinY;
        double over = layout.Spring.FinishedBack.At(pin.X).Y + p.Spring.RearStockMm - pin.Y;
        Point below = pin - (upward * (under / Math.Cos((turn * 0.5).Radians)));
        Point above = pin + (upward * over);

        double radius = p.Spring.NoseRadiusMm;
        Vector down = new(0, -1);
        Point padFront = notch.NoseRound + (down * radius);
        Point top = notch.EndFace.Meets(BearingFace.Level(layout.Spring.DialPoint.Y));
        Point curves = new(-p.Spring.PadEndMm!.Value, top.Y);
        Point bossFront = new(pin.X + layout.Rear.HalfBossMm, layout.Rear.UnderPinY);
        Edge belly = SpringDrawing.Belly(p, bossFront, padFront);
        ImmutableArray<Edge> underside = Rounds.Of(
            [
                new(new Edge(below, bossFront), SpringDrawing.BellyRoundMm),
                new(belly, SpringDrawing.BellyRoundMm),
                new(new Edge(belly.End, padFront), 0),
            ],
            isClosed: false
        );
        ImmutableArray<Edge> back = Rounds.Of(
            [
                new(new Edge(top, curves), SpringDrawing.SoftRoundMm),
                new(Rounds.Leaving(curves, new Vector(-1, 0), above), 0),
            ],
            isClosed: false
        );
        foreach (Edge edge in underside)
        {
            yield return (edge, SpringFace.Underside);
        }

        Point roundEnds = notch.NoseRound + (notch.EndFaceNormal * radius);
        if (radius > 0)
        {
            double sweep = Math.Atan2(down.Cross(notch.EndFaceNormal), down.Dot(notch.EndFaceNormal));
            yield return (Edge.Arc(padFront, roundEnds, new Angle(sweep)), SpringFace.NoseCorner);
        }

        yield return (new Edge(roundEnds, top), SpringFace.EndFace);
        foreach (Edge edge in back)
        {
            yield return (edge, SpringFace.Back);
        }
    }
}
