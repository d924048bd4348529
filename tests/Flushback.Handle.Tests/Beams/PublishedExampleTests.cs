using Flushback.Geometry;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Handle.Beams;

namespace Flushback.Handle.Tests.Beams;

/// <summary>Examples from books with the digits printed there, each book read in a public copy of the page named.</summary>
public class PublishedExampleTests
{
    /// <summary>
    /// Cam follower spring: a steel leaf 32 in long, 2 in wide and 1/4 in thick, clamped, moved 2 in by the cam from a preload
    /// of 2 or 5 in. Shigley's Mechanical Engineering Design, 9th edition, example 6-11 and figure 6-30, page 312.
    /// </summary>
    [Fact]
    public void The_leaf_under_a_cam_is_stressed_as_printed()
    {
        // Inches, pounds-force; E 30 Mpsi. Clamped at the centre pin: the front of the beam alone.
        SpringBeam leaf = Bars.Uniform(40, 32, 0.25);
        double force = 30e6 * 2 / leaf.Front.RisePerForce;
        double stressPerInch = leaf.MomentAt(0, new NoseLoad(force, 0)) / (2 * leaf.SectionAt(0).LeastModulusMm2);
        double amplitude = stressPerInch / 1000;
        Assert.Equal(10.99, amplitude, 0.005);
        Assert.Equal(33, amplitude * (1 + 2), 0.05);
        Assert.Equal(65.9, amplitude * (1 + 5), 0.05);

        // Where the horizontal load line meets Gerber's parabola and the yield line.
        Assert.Equal(116.9, SpringStrength.GerberMargin(amplitude, 1, tensile: 150, endurance: 28), 0.05);
        Assert.Equal(116, SpringStrength.YieldMargin(amplitude, 1, yield: 127), 0.05);
    }

    /// <summary>
    /// A cantilever of even width whose depth falls off as a parabola bends by 8P/(bE) (l/h)^3, twice as far as an even one,
    /// and is stressed evenly. Hicks, Civil Engineering Formulas, beams of uniform strength, figure 2.17.
    /// </summary>
    [Fact]
    public void A_beam_of_uniform_strength_bends_twice_as_far_and_is_stressed_evenly()
    {
        const double length = 40;
        const double depth = 4;

        // The point of the parabola is cut off where it is a hundredth of the length deep.
        const double tip = 1e-4 * length;
        Point[] back =
        [
            .. Enumerable
                .Range(0, 401)
                .Select(i => tip + ((length - tip) * i * i / (400.0 * 400)))
                .Select(fromEnd => new Point(length - fromEnd, depth / 2 * Math.Sqrt(fromEnd / length))),
        ];
        Outline bar = Outline.FromVertices([
            new Vertex(-50, -depth / 2),
            .. back.Reverse().Select(p => new Vertex(p.X, -p.Y)),
            .. back.Select(p => new Vertex(p.X, p.Y)),
            new Vertex(-50, depth / 2),
        ]);
        SpringBeam beam = new(bar, Bars.PinAt(0), Bars.PinAt(-40), length - tip);
        Close.To(8 * Math.Pow(length / depth, 3), beam.Front.RisePerForce, 1e-3);

        double atPin = beam.MomentAt(0, new NoseLoad(1, 0)) / beam.SectionAt(0).LeastModulusMm2;
        foreach (double x in new[] { 5.0, 15, 25, 35 })
        {
            double stress = beam.MomentAt(x, new NoseLoad(1, 0)) / beam.SectionAt(x).LeastModulusMm2;
            Close.To(atPin, stress, 2e-3);
        }
    }

    /// <summary>
    /// What bending about a curve adds, which the spring as a slightly curved beam leaves out. The crane hook of Shigley's
    /// Mechanical Engineering Design, 9th edition, figure 3-35, page 120, shows that the referee is right: 3/4 in wide,
    /// from 2 to 6 in, 5,000 lbf (the load from memory), 16.9 and -5.63 kpsi.
    /// </summary>
    [Fact]
    public void The_stress_of_a_backspring_owes_little_to_its_curve()
    {
        const double load = 5000;
        const double area = 0.75 * 4;
        (double inner, double outer) = CurvedStress(2, 6, 0.75, load * 4);
        Assert.Equal(16.9, (inner + (load / area)) / 1000, 0.05);
        Assert.Equal(-5.63, (outer + (load / area)) / 1000, 0.005);

        // A back of 300 mm radius and 3 mm of depth: a third of a percent. At 30 mm, no backspring any more, 3.5 percent.
        foreach ((double radius, double most) in new[] { (300.0, 0.0035), (30, 0.035) })
        {
            (double inside, _) = CurvedStress(radius - 1.5, radius + 1.5, 1, 1);
            double straight = 1 / new BeamSection(3).LeastModulusMm2;
            Assert.InRange((inside / straight) - 1, 0, most);
        }
    }

    /// <summary>Winkler's curved beam of rectangular section: stress of a moment at the inside and the outside.</summary>
    private static (double Inner, double Outer) CurvedStress(double from, double to, double width, double moment)
    {
        double depth = to - from;
        double neutral = depth / Math.Log(to / from);
        double eccentricity = ((from + to) / 2) - neutral;
        double scale = moment / (width * depth * eccentricity);
        return (scale * (neutral - from) / from, -scale * (to - neutral) / to);
    }
}
