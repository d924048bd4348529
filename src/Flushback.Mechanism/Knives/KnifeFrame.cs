using Flushback.Geometry;
using Flushback.Geometry.Distances;

namespace Flushback.Mechanism.Knives;

/// <summary>Finds the knife frame in a drawing: which way is up, which way is forward, and where the dial stands.</summary>
/// <param name="ToKnife">From the drawing to the knife frame, for all that does not turn with the blade.</param>
/// <param name="DialPoint">Where the dial stands, in the knife frame.</param>
internal readonly record struct KnifeFrame(RigidMotion ToKnife, Point DialPoint)
{
    // The back is curved at most gently: three rounds bring the axis to rest, more cost nothing.
    private const int Rounds = 12;

    /// <summary>
    /// Up is where the spring lies over the pivot; forward is along the spring's back at the dial, away from the
    /// centre pin; the drawing is mirrored when these two turn the wrong way round.
    /// </summary>
    public static KnifeFrame Of(DrawnKnife drawn)
    {
        Point pivot = drawn.Pivot.Centre;
        Vector up = Distance.Between(pivot, drawn.Spring).OnSecond - pivot;
        Vector forward = pivot - drawn.CentrePin.Centre;
        bool mirrored = forward.Cross(up) < 0;
        RigidMotion mirror = new(Angle.Zero, default, mirrored);
        Outline spring = drawn.Spring.Transformed(mirror);
        Point centre = mirror.Apply(pivot);
        Vector ahead = mirror.Apply(forward);

        Vector axis = drawn.HandleAxis is { } given
            ? mirror.Apply(Vector.FromDirection(given))
            : mirror.Apply(up).Right.Normalized;
        for (int round = 0; drawn.HandleAxis is null && round < Rounds; round++)
        {
            Vector along = BackAbove(spring, centre, axis.Left).Tangent;
            axis = along.Dot(ahead) >= 0 ? along : -along;
        }

        RigidMotion turn = mirror.Then(new RigidMotion(-axis.Direction, default));
        RigidMotion toKnife = turn.Then(new RigidMotion(Angle.Zero, Point.Origin - turn.Apply(pivot)));
        Point dial = drawn.DialPoint is { } placed
            ? toKnife.Apply(placed)
            : BackAbove(drawn.Spring.Transformed(toKnife), Point.Origin, new Vector(0, 1)).At;
        return new KnifeFrame(toKnife, dial);
    }

    /// <summary>The spring's back straight above a place, or the foremost end of its top if the spring does not reach there.</summary>
    private static OutlineTop BackAbove(Outline spring, Point from, Vector up) =>
        OutlineTop.Above(spring, from, up) ?? Foremost(spring, up);

    private static OutlineTop Foremost(Outline spring, Vector up)
    {
        Edge top = spring
            .Edges.Where(edge => Math.Abs(edge.Chord.Normalized.Dot(up)) < 0.5)
            .DefaultIfEmpty(spring.Edges[0])
            .MaxBy(edge => (edge.PointAt(0.5) - Point.Origin).Dot(up));
        Vector forward = up.Right;
        Point at = (top.Start - top.End).Dot(forward) > 0 ? top.Start : top.End;
        return new OutlineTop(at, top.TangentAt(0.5));
    }
}
