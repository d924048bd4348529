using CsCheck;
using Flushback.Geometry.Approximation;
using Flushback.Geometry.Crossings;
using Flushback.Geometry.Distances;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Crossings;

public class CrossingProperties
{
    private const double Tolerance = 1e-7;
    private const double Sagitta = 1e-4;

    private static readonly Gen<(Edge A, Edge B)> Pair = Gen.Select(Any.Edge, Any.Edge);

    [Fact]
    public void Meetings_lie_on_both_edges_at_their_fractions() =>
        Pair.Sample(
            (a, b) =>
            {
                foreach (Meeting meeting in Listed(Crossing.Between(a, b, Tolerance)))
                {
                    Near.Equal(meeting.At, a.PointAt(meeting.OnFirst.Middle), 2 * Tolerance);
                    Near.Equal(meeting.At, b.PointAt(meeting.OnSecond.Middle), 2 * Tolerance);
                }
            },
            iter: 1000
        );

    [Fact]
    public void Edges_meet_when_their_distance_is_nothing_and_only_then() =>
        Pair.Sample(
            (a, b) =>
                Assert.Equal(
                    Distance.Between(a, b).DistanceMm <= Tolerance,
                    Crossing.Between(a, b, Tolerance).Count > 0
                ),
            iter: 1000
        );

    [Fact]
    public void They_are_the_same_seen_from_the_other_edge_moved_or_reversed() =>
        Gen.Select(Pair, Any.Motion)
            .Sample(
                (pair, motion) =>
                {
                    (Edge a, Edge b) = pair;
                    Point[] expected = Places(Crossing.Between(a, b, Tolerance));
                    AssertSamePlaces(expected, Places(Crossing.Between(b, a, Tolerance)));
                    AssertSamePlaces(expected, Places(Crossing.Between(a.Reversed, b, Tolerance)));
                    AssertSamePlaces(
                        [.. expected.Select(motion.Apply)],
                        Places(Crossing.Between(motion.Apply(a), motion.Apply(b), Tolerance))
                    );
                },
                iter: 1000
            );

    /// <summary>
    /// Each crossing at an angle is found by the polylines near by, and polylines that cross are no farther apart as arcs
    /// than their two sagittas.
    /// </summary>
    [Fact]
    public void Polylines_of_the_edges_cross_where_they_do() =>
        Pair.Sample(
            (a, b) =>
            {
                NetTopologySuite.Geometries.Geometry common = Polyline(a).Intersection(Polyline(b));
                foreach (Meeting meeting in Listed(Crossing.Between(a, b, Tolerance)))
                {
                    Vector along = a.TangentAt(meeting.OnFirst.From);
                    double sine = Math.Abs(along.Cross(b.TangentAt(meeting.OnSecond.From)));
                    if (meeting.Kind == MeetingKind.Crossing && IsClearOfEnds(a, b, meeting) && sine > 0.05)
                    {
                        double off = common.Distance(new NetTopologySuite.Geometries.Point(meeting.At.X, meeting.At.Y));
                        Assert.InRange(off, 0, 4 * Sagitta / sine);
                    }
                }

                if (!common.IsEmpty)
                {
                    Assert.InRange(Distance.Between(a, b).DistanceMm, 0, 2 * Sagitta);
                }
            },
            iter: 200
        );

    [Fact]
    public void An_edge_overlaps_each_part_of_itself() =>
        Gen.Select(Any.Edge, Gen.Double[0, 0.45], Gen.Double[0.55, 1], Gen.Bool)
            .Sample(
                (edge, from, to, reversed) =>
                {
                    Edge part = reversed ? edge.Part(from, to).Reversed : edge.Part(from, to);
                    Meeting meeting = Crossing.Between(edge, part, 1e-6).First;
                    Assert.Equal(MeetingKind.Overlap, meeting.Kind);
                    Near.Equal(from, meeting.OnFirst.From, 1e-6);
                    Near.Equal(to, meeting.OnFirst.To, 1e-6);
                },
                iter: 1000
            );

    /// <summary>Edges built to touch: a circle of any radius square off a point of an edge.</summary>
    [Fact]
    public void A_circle_laid_against_an_edge_is_tangent_to_it_there() =>
        Gen.Select(Any.Edge, Gen.Double[0.1, 0.9], Gen.Double[0.05, 0.9], Gen.Bool)
            .Where((edge, _, _, _) => edge.RadiusMm > 0.5)
            .Sample(
                (edge, fraction, share, onRight) =>
                {
                    // Smaller than the edge's own circle, so that it touches once on either side, and too small to reach
                    // the ends.
                    Point at = edge.PointAt(fraction);
                    double toEnd = Math.Min(at.DistanceTo(edge.Start), at.DistanceTo(edge.End));
                    double radius = share * Math.Min(edge.RadiusMm, toEnd / 2);
                    Vector off = edge.OutwardNormalAt(fraction) * (onRight ? radius : -radius);
                    Edge circle = new(at + off + off.Left, at + off - off.Left, onRight ? -1 : 1);
                    Edge facing = circle with { Bulge = circle.SpansDirection(-off) ? circle.Bulge : -circle.Bulge };
                    Meetings meetings = Crossing.Between(edge, facing, 1e-6);
                    Assert.Equal((1, MeetingKind.Tangency), (meetings.Count, meetings.First.Kind));
                    Near.Equal(at, meetings.First.At, 1e-5);
                    Near.Equal(0, Distance.Between(edge, facing).DistanceMm);
                },
                iter: 1000
            );

    private static bool IsClearOfEnds(Edge a, Edge b, Meeting meeting) =>
        Math.Min(meeting.OnFirst.From, 1 - meeting.OnFirst.From) * a.LengthMm > 0.01
        && Math.Min(meeting.OnSecond.From, 1 - meeting.OnSecond.From) * b.LengthMm > 0.01;

    private static NetTopologySuite.Geometries.LineString Polyline(Edge edge) =>
        new([.. Flattening.PointsOf(edge, Sagitta).Select(p => new NetTopologySuite.Geometries.Coordinate(p.X, p.Y))]);

    private static Meeting[] Listed(Meetings meetings) =>
        [.. Enumerable.Range(0, meetings.Count).Select(i => meetings[i])];

    private static Point[] Places(Meetings meetings) => [.. Listed(meetings).Select(meeting => meeting.At)];

    private static void AssertSamePlaces(Point[] expected, Point[] actual)
    {
        Assert.Equal(expected.Length, actual.Length);
        Assert.All(expected, p => Assert.Contains(actual, q => p.IsWithin(1e-5, q)));
    }
}
