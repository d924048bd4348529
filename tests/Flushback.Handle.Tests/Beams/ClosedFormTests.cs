using CsCheck;
using Flushback.Geometry;
using Flushback.Mechanism.Handle.Beams;

namespace Flushback.Handle.Tests.Beams;

/// <summary>Uniform and tapered bars against closed forms.</summary>
/// <remarks>
/// Overhang beam: Shigley's Mechanical Engineering Design, table A-9 case 10 (deflection and reactions read in public
/// copies of the table, slope derived from them). Tapered cantilevers: the integral of the unit-load method solved by hand.
/// </remarks>
public class ClosedFormTests
{
    private const double Modulus = 206_000;
    private const double Width = 2.5;
    private const double Depth = 4;

    [Fact]
    public void An_overhang_bends_as_the_beam_tables_say() =>
        Gen.Select(Gen.Double[20, 80], Gen.Double[10, 60], Gen.Double[1.5, 6])
            .Sample(
                (span, overhang, depth) =>
                {
                    SpringBeam beam = Bars.Uniform(span, overhang, depth);
                    double stiffness = depth * depth * depth / 12;
                    double deflection = overhang * overhang * (span + overhang) / (3 * stiffness);
                    double slope = overhang * ((2 * span) + (3 * overhang)) / (6 * stiffness);
                    Close.To(deflection, beam.Whole.RisePerForce, 1e-11);
                    Close.To(slope, beam.Whole.TiltPerForce, 1e-11);
                },
                iter: 100
            );

    [Fact]
    public void A_worked_overhang_gives_its_numbers()
    {
        // Computed from the closed forms for E 206,000, b 2.5, h 4, L 40, a 45 and one millimetre at the tip.
        SpringBeam beam = Bars.Uniform(40, 45, Depth);
        double force = Modulus * Width / beam.Whole.RisePerForce;
        Close.To(47.872186, force, 1e-8);
        Close.To(0.028104575, beam.Whole.TiltPerForce / beam.Whole.RisePerForce, 1e-8);
        NoseLoad load = new(force, 0);
        double modulus = Width * beam.SectionAt(0).LeastModulusMm2;
        Close.To(323.137255, beam.MomentAt(0, load) / modulus, 1e-8);

        // The far reaction turns the moment off evenly: its slope behind the centre pin.
        Close.To(53.856209, (beam.MomentAt(0, load) - beam.MomentAt(-1, load)) / 1, 1e-8);
        Assert.Equal(0, beam.MomentAt(-40, load), 1e-9);
    }

    [Fact]
    public void A_clamp_where_there_is_a_pin_would_make_it_1_89_times_too_stiff()
    {
        SpringBeam beam = Bars.Uniform(40, 45, Depth);
        Close.To(90.425240, Modulus * Width / beam.Front.RisePerForce, 1e-8);
        Close.To(85.0 / 45, beam.Whole.RisePerForce / beam.Front.RisePerForce, 1e-12);
    }

    [Theory]
    [InlineData(1, 4)]
    [InlineData(0.9, 4.326188)]
    [InlineData(0.8, 4.715327)]
    [InlineData(0.75, 4.939832)]
    [InlineData(0.6, 5.779804)]
    [InlineData(0.5, 6.542129)]
    public void A_taper_in_depth_bends_as_computed(double ratio, double factor)
    {
        // Deflection of a cantilever factor P L^3 / (E b h^3); computed, tip depth over root depth.
        const double length = 40;
        Outline bar = Outline.FromVertices([
            new Vertex(-50, -Depth / 2),
            new Vertex(0, -Depth / 2),
            new Vertex(length, -ratio * Depth / 2),
            new Vertex(length, ratio * Depth / 2),
            new Vertex(0, Depth / 2),
            new Vertex(-50, Depth / 2),
        ]);
        SpringBeam beam = new(bar, Bars.PinAt(0), Bars.PinAt(-40), length);
        double expected = factor * length * length * length / (Depth * Depth * Depth);

        // The cuts stand square on the centreline, which is straight here: seven printed digits.
        Close.To(expected, beam.Front.RisePerForce, 1e-7);
    }

    [Fact]
    public void Force_and_moment_are_reciprocal_and_the_stiffness_undoes_the_flexibility()
    {
        SpringBeam beam = Bars.Uniform(35, 25, 3);
        NoseStiffness stiffness = beam.Whole.ToStiffness(Modulus, Width);
        NosePosition under = new(
            beam.Whole.RisePerForce / (Modulus * Width),
            beam.Whole.TiltPerForce / (Modulus * Width)
        );
        NoseLoad load = stiffness.LoadAt(under);
        Close.To(1, load.ForceN, 1e-11);
        Assert.Equal(0, load.MomentNmm, 1e-9);
        Close.To(under.RiseMm / 2, stiffness.EnergyAt(under), 1e-11);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1e-13)]
    [InlineData(1e-13)]
    public void A_corner_of_the_outline_right_over_a_pin_is_no_gap(double pin)
    {
        Outline bar = Outline.FromVertices([
            new Vertex(-50, -2),
            new Vertex(0, -2),
            new Vertex(40, -2),
            new Vertex(40, 2),
            new Vertex(0, 2),
            new Vertex(-50, 2),
        ]);
        SpringBeam beam = new(bar, Bars.PinAt(pin), Bars.PinAt(-40), 30);
        Close.To(4, beam.SectionAt(pin).DepthMm, 1e-12);
    }

    [Fact]
    public void A_hole_at_half_depth_takes_its_own_second_moment_away()
    {
        BeamSection section = new(5, 2);
        Close.To((125.0 - 8) / 12, section.SecondMomentMm3, 1e-14);
        Close.To((125.0 - 8) / 12 / 2.5, section.LeastModulusMm2, 1e-14);
    }

    [Fact]
    public void A_hole_off_half_depth_bends_about_the_centroid_of_what_is_left()
    {
        // Two strips, 1 mm under and 2 mm over a 2 mm hole: by the parallel-axis theorem about their common centroid.
        BeamSection section = new(5, 2, -0.5);
        double centroid = ((1 * 0.5) + (2 * 4.0)) / 3;
        double expected = (1.0 / 12) + Math.Pow(centroid - 0.5, 2) + (8.0 / 12) + (2 * Math.Pow(4 - centroid, 2));
        Close.To(expected, section.SecondMomentMm3, 1e-14);
        Close.To(centroid - 2.5, section.CentroidMm, 1e-13);
        Assert.Equal((1, 2), (section.UnderHoleMm, section.OverHoleMm));
    }

    [Fact]
    public void A_curved_spring_tends_to_the_straight_one()
    {
        double straight = Bars.Uniform(40, 30, 3).Whole.RisePerForce;
        double before = double.PositiveInfinity;
        foreach (double bulge in new[] { 0.1, 0.05, 0.025 })
        {
            SpringBeam beam = new(Arched(bulge), Bars.PinAt(0), Bars.PinAt(-40), 30);
            double off = Math.Abs((beam.Whole.RisePerForce / straight) - 1);

            // The error is of second order in the curvature: a quarter for half of it.
            Assert.InRange(off, 0, before / 3.5);
            before = off;
        }

        Assert.InRange(before, 0, 3e-3);
    }

    /// <summary>A band of even depth 3 between two arcs about one centre, passing the pins' line midway.</summary>
    private static Outline Arched(double bulge)
    {
        Edge middle = new(new Point(35, 0), new Point(-45, 0), bulge);
        Point centre = middle.Centre;
        Point Out(Point p, double by) => p + ((p - centre).Normalized * by);
        return Outline.FromVertices([
            new Vertex(Out(middle.Start, 1.5), bulge),
            new Vertex(Out(middle.End, 1.5)),
            new Vertex(Out(middle.End, -1.5), -bulge),
            new Vertex(Out(middle.Start, -1.5)),
        ]);
    }
}
