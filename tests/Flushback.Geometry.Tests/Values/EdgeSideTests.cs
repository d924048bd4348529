using CsCheck;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Values;

/// <summary>Which points lie left of an edge's carrier, and which directions from its centre an arc spans.</summary>
public class EdgeSideTests
{
    [Fact]
    public void The_distance_left_of_an_arc_is_the_radius_less_the_distance_from_its_centre() =>
        Gen.Select(Any.Arc, Any.Point)
            .Sample(
                (arc, p) =>
                {
                    double inside = arc.RadiusMm - p.DistanceTo(arc.Centre);
                    double expected = arc.Bulge > 0 ? inside : -inside;
                    Near.Equal(expected, arc.LeftOfCarrierMm(p), 1e-9 + (1e-15 * arc.RadiusMm));
                    Assert.Equal(Math.Sign(arc.SideOfCarrier(p)), Math.Sign(arc.LeftOfCarrierMm(p)));
                }
            );

    [Fact]
    public void A_point_off_the_right_of_an_edge_lies_right_of_it_by_as_much() =>
        Gen.Select(Any.Edge, Gen.Double[0, 1], Gen.Double[-1, 1])
            .Where((edge, _, off) => !edge.IsArc || Math.Abs(off) < edge.RadiusMm)
            .Sample(
                (edge, fraction, off) =>
                    Near.Equal(
                        -off,
                        edge.LeftOfCarrierMm(edge.PointAt(fraction) + (edge.OutwardNormalAt(fraction) * off))
                    )
            );

    [Fact]
    public void A_nearly_straight_arc_measures_like_the_line_it_almost_is()
    {
        Edge arc = new(new Point(0, 0), new Point(10, 0), 1.1e-8);
        Near.Equal(3 + (10 * 1.1e-8 / 2), arc.LeftOfCarrierMm(new Point(5, 3)), 1e-12);
    }

    [Fact]
    public void An_arc_spans_the_directions_of_its_own_points_both_ends_among_them() =>
        Gen.Select(Any.Arc, Gen.Double[0.001, 0.999])
            .Sample(
                (arc, fraction) =>
                {
                    Assert.True(arc.SpansDirection(arc.PointAt(fraction) - arc.Centre));
                    Assert.True(arc.SpansDirection(arc.Start - arc.Centre));
                    Assert.True(arc.SpansDirection(arc.End - arc.Centre));
                }
            );

    [Fact]
    public void An_arc_spans_no_direction_of_the_rest_of_its_circle() =>
        Gen.Select(Any.Arc, Gen.Double[0.001, 0.999])
            .Sample(
                (arc, fraction) =>
                {
                    Edge rest = RestOfCircle(arc);
                    Assert.False(arc.SpansDirection(rest.PointAt(fraction) - rest.Centre));
                }
            );

    [Fact]
    public void The_fraction_at_a_direction_finds_the_point_again() =>
        Gen.Select(Any.Arc, Gen.Double[0, 1])
            .Sample(
                (arc, fraction) =>
                    Near.Equal(fraction, arc.FractionAtDirection(arc.PointAt(fraction) - arc.Centre), 1e-8)
            );

    [Fact]
    public void Just_off_the_ends_the_fraction_goes_on_below_zero_and_above_one() =>
        Gen.Select(Any.Arc, Gen.Double[1e-4, 0.4])
            .Sample(
                (arc, share) =>
                {
                    // Less than half of the rest of the circle, so that the nearer end decides.
                    double rest = (Math.Tau / Math.Abs(arc.Sweep.Radians)) - 1;
                    double off = share * rest;
                    Near.Equal(1 + off, arc.FractionAtDirection(arc.PointAt(1 + off) - arc.Centre), 1e-8 * (1 + off));
                    Near.Equal(-off, arc.FractionAtDirection(arc.PointAt(-off) - arc.Centre), 1e-8 * (1 + off));
                }
            );

    [Theory]
    [InlineData(0.5)]
    [InlineData(-0.5)]
    [InlineData(1)]
    [InlineData(-1)]
    [InlineData(2.5)]
    [InlineData(-40)]
    public void The_own_ends_are_at_zero_and_one(double bulge)
    {
        Edge arc = new(new Point(3, 1), new Point(-2, 7), bulge);
        Near.Equal(0, arc.FractionAtDirection(arc.Start - arc.Centre), 1e-12);
        Near.Equal(1, arc.FractionAtDirection(arc.End - arc.Centre), 1e-12);
    }

    private static Edge RestOfCircle(Edge arc) =>
        Edge.Arc(arc.End, arc.Start, new Angle((Math.Sign(arc.Bulge) * Math.Tau) - arc.Sweep.Radians));
}
