using Flushback.Mechanism.Materials;

namespace Flushback.Mechanism.Handle;

/// <summary>Holds the stress of a spring against its steel.</summary>
/// <remarks>
/// Allowable shares of the tensile strength: at rest 0.75 to 0.80, a thousand to a million times 0.60 to 0.64, without end
/// 0.50 to 0.55 (a machine-elements textbook's table for torsion springs, read second-hand); the lower end is used.
/// </remarks>
public static class SpringStrength
{
    /// <summary>Share of the tensile strength a spring bears at rest without a set.</summary>
    public const double RestShare = 0.75;

    /// <summary>Share it bears a thousand to a million times.</summary>
    public const double LimitedShare = 0.60;

    /// <summary>Share it bears without end.</summary>
    public const double EndlessShare = 0.50;

    // Endurance limit of a polished bar, half the tensile strength up to 700 MPa, and how a ground surface lowers it: Shigley's
    // Mechanical Engineering Design, 9th edition, section 6-7 and table 6-2, read in a public copy; without shares for
    // size and reliability.
    private const double EnduranceShare = 0.5;
    private const double MostEnduranceMpa = 700;
    private const double GroundFactor = 1.58;
    private const double GroundExponent = -0.085;

    // Yield of a hardened and tempered steel as a share of its tensile strength; ours.
    private const double YieldShare = 0.85;

    /// <summary>Pressure at which a line contact begins to yield below the surface, for a tensile strength.</summary>
    /// <remarks>
    /// Greatest shear 0.30 of the pressure, at 0.79 of the half width below the surface, against half the yield strength
    /// (greatest-shear rule). The share is the greatest value of the shear under a line contact in closed form.
    /// </remarks>
    public static double YieldPressureMpa(double tensileMpa) => YieldShare * tensileMpa / (2 * 0.30);

    /// <summary>The verdict over a rotation.</summary>
    internal static StrengthVerdict Judge(HandleModel model, HandleSweep sweep)
    {
        (double peak, int place) = model.Stress.Peak(sweep.Worst.Load);
        HandleSettings settings = model.Settings;
        ValueRange? tensile = settings.SpringSteel.TensileAt(settings.SpringHardnessHrc);
        double low = sweep.States.Min(state => Math.Abs(model.Stress.At(place, state.Load)));
        double alternating = (peak - low) / 2;
        double mean = (peak + low) / 2;
        return new StrengthVerdict(
            peak,
            model.Stress.XMm[place],
            sweep.Worst.BladeAngle,
            tensile,
            LifeAt(peak, tensile),
            tensile is { } strength ? GerberMargin(alternating, mean, strength.Low, EnduranceMpa(strength.Low)) : null,
            tensile is { } bound ? YieldMargin(alternating, mean, YieldShare * bound.Low) : null
        );
    }

    /// <summary>How often the mean stress could be had, the alternating part as it is, by Gerber's parabola.</summary>
    public static double GerberMargin(double alternating, double mean, double tensile, double endurance) =>
        alternating >= endurance ? 0 : tensile * Math.Sqrt(1 - (alternating / endurance)) / mean;

    /// <summary>How often the mean stress could be had before the sum of both yields.</summary>
    public static double YieldMargin(double alternating, double mean, double yield) =>
        Math.Max(0, yield - alternating) / mean;

    internal static double EnduranceMpa(double tensileMpa) =>
        GroundFactor * Math.Pow(tensileMpa, GroundExponent) * Math.Min(MostEnduranceMpa, EnduranceShare * tensileMpa);

    private static SpringLife LifeAt(double peakMpa, ValueRange? tensile) =>
        tensile is not { } strength ? SpringLife.Unknown
        : peakMpa <= EndlessShare * strength.Low ? SpringLife.Endless
        : peakMpa <= LimitedShare * strength.Low ? SpringLife.Limited
        : peakMpa <= RestShare * strength.Low ? SpringLife.Short
        : SpringLife.TakesSet;
}
