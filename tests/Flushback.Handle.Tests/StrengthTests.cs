using Flushback.Mechanism.Handle;

namespace Flushback.Handle.Tests;

public class StrengthTests
{
    /// <summary>
    /// A flat leaf under a cam, Shigley's Mechanical Engineering Design, chapter on fatigue (statement read second-hand,
    /// margins computed): the cam fixes the alternating part of 11 kpsi, the preload sets a mean of 33 or 66.
    /// </summary>
    [Theory]
    [InlineData(33, 3.5418, 3.5152)]
    [InlineData(66, 1.7709, 1.7576)]
    public void The_load_line_is_horizontal_where_a_cam_fixes_the_alternating_part(
        double mean,
        double gerber,
        double yield
    )
    {
        Assert.Equal(gerber, SpringStrength.GerberMargin(11, mean, tensile: 150, endurance: 28), 5e-5);
        Assert.Equal(yield, SpringStrength.YieldMargin(11, mean, yield: 127), 5e-5);
    }

    [Fact]
    public void No_mean_stress_is_left_when_the_alternating_part_alone_is_too_much() =>
        Assert.Equal(0, SpringStrength.GerberMargin(30, 33, 150, 28));

    /// <summary>Cylinder on a flat, computed from Hertz's formulas for E 206,000 and 0.3.</summary>
    [Theory]
    [InlineData(100, 2.5, 5, 0.047432077, 536.868562)]
    [InlineData(50, 2.4, 0.5, 0.010824841, 1225.229258)]
    public void A_line_contact_presses_as_computed(
        double force,
        double width,
        double radius,
        double half,
        double pressure
    )
    {
        Close.To(half, LineContact.HalfWidthMm(force, width, radius, 206_000), 1e-7);
        Close.To(pressure, LineContact.PressureMpa(force, width, radius, 206_000), 1e-8);
    }

    /// <summary>
    /// Roller on a flat of the same material: width of contact sqrt(32 F (1 - v^2) r / (pi L E)), pressure 4F/(pi w L).
    /// Carvill, Mechanical Engineer's Data Handbook, 1993, page 52, read in a public copy.
    /// </summary>
    [Theory]
    [InlineData(100, 2.5, 5, 206_000)]
    [InlineData(31, 1.9, 0.3, 196_000)]
    public void A_roller_on_a_flat_presses_as_the_handbook_says(
        double force,
        double length,
        double radius,
        double modulus
    )
    {
        double width = Math.Sqrt(32 * force * (1 - (0.3 * 0.3)) * radius / (Math.PI * length * modulus));
        Close.To(width, 2 * LineContact.HalfWidthMm(force, length, radius, modulus), 1e-12);
        Close.To(
            4 * force / (Math.PI * width * length),
            LineContact.PressureMpa(force, length, radius, modulus),
            1e-12
        );
    }

    /// <summary>
    /// Of a cylinder of diameter D on a flat, both with v 0.3: 0.591 sqrt(p E / D) and a strip 2.15 sqrt(p D / E) wide.
    /// Roark's Formulas for Stress and Strain, 7th edition, table 14.1; from memory.
    /// </summary>
    [Fact]
    public void A_cylinder_on_a_flat_has_the_printed_coefficients()
    {
        Assert.Equal(0.591, LineContact.PressureMpa(1, 1, 0.5, 1), 5e-4);
        Assert.Equal(2.15, 2 * LineContact.HalfWidthMm(1, 1, 0.5, 1), 5e-3);
    }

    /// <summary>
    /// Shear under a line contact over the greatest pressure, at depth z over the half width: Rao, Engineering Optimization,
    /// 4th edition, problem 5.5, read in a public copy; its maximum was sought here.
    /// </summary>
    [Fact]
    public void The_softer_part_yields_where_the_shear_below_the_surface_is_greatest()
    {
        static double Shear(double z)
        {
            double root = Math.Sqrt(1 + (z * z));
            return (1 / (2 * root)) - ((1 - (1 / (2 * root * root))) * root) + z;
        }

        double deepest = Enumerable.Range(1, 20_000).Select(i => i * 1e-4).MaxBy(Shear);
        Assert.Equal(0.786, deepest, 5e-4);
        Assert.Equal(0.300, Shear(deepest), 5e-4);

        // Yield at 0.85 of the tensile strength, half of it in shear.
        Close.To(0.85 * 1400 / 2, SpringStrength.YieldPressureMpa(1400) * Shear(deepest), 2e-3);
    }

    /// <summary>
    /// Shigley's Mechanical Engineering Design, 9th edition: half the tensile strength up to 1,400 MPa, 700 MPa above
    /// (section 6-7), and 1.58 times the -0.085th power for a ground surface (table 6-2).
    /// </summary>
    [Theory]
    [InlineData(1000, 500 * 0.8783)]
    [InlineData(1400, 700 * 0.8536)]
    [InlineData(1800, 700 * 0.8355)]
    public void A_ground_spring_endures_as_the_book_estimates(double tensile, double endurance) =>
        Close.To(endurance, SpringStrength.EnduranceMpa(tensile), 1e-4);
}
