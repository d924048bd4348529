using CsCheck;
using Flushback.Geometry.Distances;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Outlines;

/// <summary>Measures of a shape do not depend on how and where it is drawn.</summary>
public class OutlineInvarianceTests
{
    private const double RelativeRounding = 1e-11;

    [Fact]
    public void Moving_or_mirroring_keeps_every_measure() =>
        Gen.Select(Any.Outline, Any.Motion, Any.Point)
            .Sample(
                (outline, motion, p) =>
                {
                    Outline moved = outline.Transformed(motion);
                    AssertSameMeasures(outline, p, moved, motion.Apply(p));
                    Assert.Equal(motion.Mirrored, outline.IsCounterClockwise != moved.IsCounterClockwise);
                }
            );

    [Fact]
    public void Drawing_it_the_other_way_round_keeps_every_measure() =>
        Gen.Select(Any.Outline, Any.Point)
            .Sample(
                (outline, p) =>
                {
                    AssertSameMeasures(outline, p, outline.Reversed(), p);
                    Near.Equal(-outline.SignedAreaMm2, outline.Reversed().SignedAreaMm2);
                    Assert.Equal(outline.Edges.AsEnumerable(), outline.Reversed().Reversed().Edges);
                }
            );

    [Fact]
    public void Starting_at_another_vertex_keeps_every_measure() =>
        Gen.Select(Any.Outline, Any.Point, Gen.Int[0, 13])
            .Sample((outline, p, vertex) => AssertSameMeasures(outline, p, outline.StartingAt(vertex), p));

    [Fact]
    public void Splitting_an_edge_keeps_every_measure() =>
        Gen.Select(Any.Outline, Any.Point, Gen.Int[0, 13], Gen.Double[0.1, 0.9])
            .Sample(
                (outline, p, edge, fraction) => AssertSameMeasures(outline, p, outline.WithEdgeSplit(edge, fraction), p)
            );

    [Fact]
    public void The_distance_of_two_outlines_goes_with_both() =>
        Gen.Select(Any.Outline, Any.Outline, Any.Motion, Any.Motion)
            .Sample(
                (a, b, apart, motion) =>
                {
                    Outline other = b.Transformed(apart);
                    double expected = Distance.Between(a, other).DistanceMm;
                    Near.Equal(expected, Distance.Between(other.Reversed(), a.StartingAt(1)).DistanceMm);
                    Near.Equal(expected, Distance.Between(a.Transformed(motion), other.Transformed(motion)).DistanceMm);
                }
            );

    private static void AssertSameMeasures(Outline expected, Point p, Outline actual, Point q)
    {
        Near.Equal(expected.AreaMm2, actual.AreaMm2, RelativeRounding * expected.AreaMm2);
        Near.Equal(expected.PerimeterMm, actual.PerimeterMm, RelativeRounding * expected.PerimeterMm);
        double signed = expected.SignedDistanceMm(p);
        Near.Equal(signed, actual.SignedDistanceMm(q));
        Assert.Equal(expected.Contains(p), actual.Contains(q));
    }
}
