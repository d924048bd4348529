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
}
