using CsCheck;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Values;

public class EdgeTests
{
    /// <summary>Source: the definition of the bulge in the public DXF reference, and elementary geometry.</summary>
    [Fact]
    public void A_quarter_circle_over_a_chord_of_10_has_the_radius_and_sagitta_of_its_bulge()
    {
        Edge arc = new(new Point(0, 0), new Point(10, 0), 0.414213562373095);
        Near.Equal(7.071067812, arc.RadiusMm);
        Near.Equal(2.071067812, arc.SagittaMm);
        Near.Equal(90, arc.Sweep.Degrees);
        Near.Equal(new Point(5, 5), arc.Centre);
        Near.Equal(new Point(5, -2.071067812), arc.PointAt(0.5));
        Near.Equal(7.071067811865475 * Math.PI / 2, arc.LengthMm);
    }

    [Fact]
    public void A_counter_clockwise_half_circle_from_the_right_runs_over_the_top()
    {
        Edge arc = new(new Point(1, 0), new Point(-1, 0), 1);
        Near.Equal(new Point(0, 1), arc.PointAt(0.5));
        Vector travel = arc.TangentAt(0);
        Near.Equal(1, travel.Y);
        Near.Equal(1, arc.OutwardNormalAt(0).X);
    }

    [Fact]
    public void Both_ends_are_met_exactly() =>
        Any.Edge.Sample(edge =>
        {
            Assert.Equal(edge.Start, edge.PointAt(0));
            Near.Equal(edge.End, edge.PointAt(1), 1e-13);
        });

    [Fact]
    public void Every_point_of_an_arc_is_a_radius_from_its_centre() =>
        Gen.Select(Any.Arc, Gen.Double[0, 1])
            .Sample(
                (arc, fraction) => Near.Equal(1, arc.PointAt(fraction).DistanceTo(arc.Centre) / arc.RadiusMm, 1e-12)
            );

    [Fact]
    public void A_reversed_edge_passes_the_same_points_backwards() =>
        Gen.Select(Any.Edge, Gen.Double[0, 1])
            .Sample((edge, fraction) => Near.Equal(edge.PointAt(fraction), edge.Reversed.PointAt(1 - fraction)));

    [Fact]
    public void The_tangent_is_the_direction_of_a_short_step() =>
        Gen.Select(Any.Edge, Gen.Double[0.01, 0.99])
            .Sample(
                (edge, fraction) =>
                {
                    Vector step = edge.PointAt(fraction + 1e-6) - edge.PointAt(fraction - 1e-6);
                    Near.Equal(1, edge.TangentAt(fraction).Dot(step.Normalized), 1e-6);
                }
            );

    [Fact]
    public void Two_parts_are_as_long_as_the_whole_and_lie_on_it() =>
        Gen.Select(Any.Edge, Gen.Double[0.05, 0.95], Gen.Double[0, 1])
            .Sample(
                (edge, cut, fraction) =>
                {
                    Edge first = edge.Part(0, cut);
                    Edge second = edge.Part(cut, 1);
                    Near.Equal(edge.LengthMm, first.LengthMm + second.LengthMm);
                    Near.Equal(edge.PointAt(cut * fraction), first.PointAt(fraction));
                    Near.Equal(edge.PointAt(cut + ((1 - cut) * fraction)), second.PointAt(fraction));
                }
            );

    [Fact]
    public void The_box_holds_every_point_and_is_touched_on_all_four_sides() =>
        Any.Edge.Sample(edge =>
        {
            Box sampled = Enumerable
                .Range(0, 2001)
                .Aggregate(Box.Empty, (box, i) => box.Including(edge.PointAt(i / 2000.0)));
            Box bounds = edge.Bounds;
            double sagittaOfStep = edge.LengthMm / 2000;
            Assert.True(bounds.Grown(1e-9).Including(sampled) == bounds.Grown(1e-9));
            Assert.True(sampled.Grown(sagittaOfStep).Including(bounds) == sampled.Grown(sagittaOfStep));
        });

    /// <summary>The series below a sweep of 0.2 and the closed form above it must agree where they meet.</summary>
    [Fact]
    public void The_segment_area_is_smooth_where_its_formula_changes()
    {
        Edge below = new(new Point(0, 0), new Point(10, 0), Math.Tan(0.2 / 4) * (1 - 1e-12));
        Edge above = new(new Point(0, 0), new Point(10, 0), Math.Tan(0.2 / 4) * (1 + 1e-12));
        Near.Equal(1, below.SegmentAreaMm2 / above.SegmentAreaMm2, 1e-11);
    }

    /// <summary>A flat segment is two thirds of chord times sagitta (Archimedes, for the parabola it tends to).</summary>
    [Fact]
    public void A_nearly_straight_arc_keeps_the_digits_of_its_area_and_its_middle()
    {
        Edge arc = new(new Point(100, 0), new Point(110, 0), 2e-7);
        Near.Equal(1, arc.SegmentAreaMm2 / (2.0 / 3 * 10 * 1e-6), 1e-9);
        Near.Equal(new Point(105, -1e-6), arc.PointAt(0.5), 1e-13);
    }

    [Fact]
    public void A_bulge_too_small_to_bend_a_line_is_a_line()
    {
        Edge line = new(new Point(0, 0), new Point(10, 0), 1e-9);
        Assert.False(line.IsArc);
        Assert.Equal(10, line.LengthMm);
        Assert.Equal(Angle.Zero, line.Sweep);
    }
}
