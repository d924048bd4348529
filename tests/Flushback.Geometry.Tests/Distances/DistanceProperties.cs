using CsCheck;
using Flushback.Geometry.Distances;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Distances;

public class DistanceProperties
{
    private static readonly Gen<(Edge A, Edge B)> Pair = Gen.Select(Any.Edge, Any.Edge);

    [Fact]
    public void It_is_the_same_from_either_side() =>
        Pair.Sample((a, b) => Near.Equal(Distance.Between(a, b).DistanceMm, Distance.Between(b, a).DistanceMm));

    [Fact]
    public void It_is_kept_by_motions_reversal_and_splitting() =>
        Gen.Select(Pair, Any.Motion, Gen.Double[0.1, 0.9])
            .Sample(
                (pair, motion, cut) =>
                {
                    (Edge a, Edge b) = pair;
                    double expected = Distance.Between(a, b).DistanceMm;
                    Near.Equal(expected, Distance.Between(motion.Apply(a), motion.Apply(b)).DistanceMm, 1e-8);
                    Near.Equal(expected, Distance.Between(a.Reversed, b).DistanceMm, 1e-8);
                    Near.Equal(expected, Distance.Between([a.Part(0, cut), a.Part(cut, 1)], [b]).DistanceMm, 1e-8);
                }
            );

    [Fact]
    public void It_goes_from_a_point_of_the_one_to_a_point_of_the_other() =>
        Pair.Sample(
            (a, b) =>
            {
                Nearest way = Distance.Between(a, b);
                Near.Equal(way.DistanceMm, way.OnFirst.DistanceTo(way.OnSecond));
                AssertOn(a, way.OnFirst);
                AssertOn(b, way.OnSecond);
            }
        );

    /// <summary>With the ends of the way on the edges, no shorter way among the samples proves it the shortest.</summary>
    [Fact]
    public void Dense_sampling_finds_no_shorter_way() =>
        Pair.Sample(
            (a, b) => Assert.InRange(Distance.Between(a, b).DistanceMm, 0, SampledDistance.Between(a, b) + 1e-9),
            iter: 200
        );

    [Fact]
    public void Dense_sampling_from_a_point_finds_no_shorter_way() =>
        Gen.Select(Any.Point, Any.Edge)
            .Sample(
                (p, edge) =>
                {
                    double exact = Distance.Between(p, edge).DistanceMm;
                    double sampled = Enumerable.Range(0, 1001).Min(i => p.DistanceTo(edge.PointAt(i / 1000.0)));
                    Assert.InRange(exact, sampled - (edge.LengthMm / 2000), sampled + 1e-9);
                }
            );

    [Fact]
    public void Leaving_out_far_boxes_changes_nothing() =>
        Gen.Select(Any.Outline, Any.Outline, Any.Motion, Any.Point)
            .Sample(
                (a, b, motion, p) =>
                {
                    Outline other = b.Transformed(motion);
                    double every = a.Edges.Min(first =>
                        other.Edges.Min(second => Distance.Between(first, second).DistanceMm)
                    );
                    Assert.Equal(every, Distance.Between(a, other).DistanceMm);
                    Assert.Equal(every, Distance.Between(a.Edges.AsSpan(), other.Edges.AsSpan()).DistanceMm);
                    Assert.Equal(
                        a.Edges.Min(edge => Distance.Between(p, edge).DistanceMm),
                        Distance.Between(p, a).DistanceMm
                    );
                }
            );

    [Fact]
    public void Measuring_allocates_nothing()
    {
        Outline a = Named.Slot(20, 3);
        Outline b = Named.Hexagon(4).Transformed(new RigidMotion(new Angle(0.3), new Vector(40, 10)));
        Point p = new(1, 1);
        Measure();
        long before = GC.GetAllocatedBytesForCurrentThread();
        Measure();
        Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());

        void Measure()
        {
            _ = Distance.Between(a, b);
            _ = Distance.Between(p, a);
            _ = Distance.Between(a.Edges.AsSpan(), b.Edges.AsSpan());
            _ = a.Contains(p);
            _ = a.SignedDistanceMm(p);
        }
    }

    private static void AssertOn(Edge edge, Point p)
    {
        if (edge.IsArc)
        {
            // How far rounding may carry a point off a large circle.
            double rounding = 1e-9 + (1e-15 * edge.RadiusMm);
            Near.Equal(edge.RadiusMm, p.DistanceTo(edge.Centre), rounding);
            double fraction = edge.FractionAtDirection(p - edge.Centre);
            Assert.InRange(fraction, -rounding / edge.LengthMm, 1 + (rounding / edge.LengthMm));
            return;
        }

        Near.Equal(edge.LengthMm, p.DistanceTo(edge.Start) + p.DistanceTo(edge.End));
    }
}
