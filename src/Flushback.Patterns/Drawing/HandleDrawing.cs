using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Patterns.Layout;

namespace Flushback.Patterns.Drawing;

/// <summary>Draws liner or scale, and the well of the closed blade.</summary>
internal static class HandleDrawing
{
    // Rounds of the corners, as shares of the handle's height there: what looks like a pocket knife (ours).
    private const double FrontTopShare = 0.12;
    private const double FrontLowShare = 0.45;
    private const double ButtTopShare = 0.34;
    private const double ButtLowShare = 0.62;
    private const double WellRoundMm = 2;
    private const double RunOutMm = 1;

    /// <summary>Radius of the upper corner of the butt, which the spring's rear end has too.</summary>
    public static double ButtRadiusMm(HandleLayout handle) => ButtTopShare * handle.ButtHeightMm;

    /// <summary>Liner or scale, counter-clockwise.</summary>
    public static Outline Draw(HandleLayout handle)
    {
        ImmutableArray<Edge> back = handle.Line.From(handle.FrontX, handle.ButtX);
        List<Rounds.Leg> legs =
        [
            new(new Edge(handle.LowerLine.End, back[0].Start), FrontTopShare * handle.FrontHeightMm),
            .. back.Take(back.Length - 1).Select(edge => new Rounds.Leg(edge, 0)),
            new(back[^1], ButtRadiusMm(handle)),
            new(new Edge(back[^1].End, handle.LowerLine.Start), ButtLowShare * handle.ButtHeightMm),
            new(handle.LowerLine, FrontLowShare * handle.FrontHeightMm),
        ];
        return OutlineOf(Rounds.Of(legs.ToArray(), isClosed: true));
    }

    /// <summary>The well, counter-clockwise: above the closed edge, behind the tip, and out of the handle below and in front.</summary>
    public static Outline Well(PatternLayout layout)
    {
        BladeLayout blade = layout.Blade;
        double clearance = layout.Dimensions.Handle.WellClearanceMm;
        double rear = -blade.TipX - clearance;
        double front = blade.FrontX + RunOutMm;
        double top = -blade.EdgeY + clearance;
        double low = layout.Handle.LowerLine.Bounds.MinY - RunOutMm;
        Point rearTop = new(rear, top);
        Point rearLow = new(rear, low);
        Point frontLow = new(front, low);
        Point frontTop = new(front, top);
        return OutlineOf(
            Rounds.Of(
                [
                    new Rounds.Leg(new Edge(rearLow, frontLow), 0),
                    new Rounds.Leg(new Edge(frontLow, frontTop), 0),
                    new Rounds.Leg(new Edge(frontTop, rearTop), WellRoundMm),
                    new Rounds.Leg(new Edge(rearTop, rearLow), 0),
                ],
                isClosed: true
            )
        );
    }

    private static Outline OutlineOf(ImmutableArray<Edge> edges) =>
        Outline.FromVertices([.. edges.Select(edge => new Vertex(edge.Start, edge.Bulge))]);
}
