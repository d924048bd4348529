using Flushback.Dxf;

namespace Flushback.Inspection.Pins;

/// <summary>Between which diameters a hole is right for its pin.</summary>
internal static class HoleLimits
{
    /// <summary>Upper limits of H7 in mm up to and including a nominal diameter in mm; the lower limit is zero.</summary>
    /// <remarks>
    /// ISO 286-2, table of limit deviations for holes H: over 0 to 3 mm +0.010, over 3 to 6 +0.012; from memory the rows
    /// over 6 to 10 +0.015, over 10 to 18 +0.018, over 18 to 30 +0.021.
    /// </remarks>
    private static readonly (double UpToMm, double UpperMm)[] H7 =
    [
        (3, 0.010),
        (6, 0.012),
        (10, 0.015),
        (18, 0.018),
        (30, 0.021),
    ];

    /// <summary>The largest pin there are limits for.</summary>
    public static double LargestPinMm => H7[^1].UpToMm;

    /// <summary>The fit of a hole and a pin.</summary>
    /// <param name="pin">The pin.</param>
    /// <param name="holeMm">Diameter of the hole as drawn.</param>
    /// <param name="isReamed">True when the hole is cut small and reamed afterwards.</param>
    /// <remarks>Limits and diameter are rounded to a picometre, so that a hole drawn at its limit is within it.</remarks>
    public static PinFit Of(Pin pin, double holeMm, bool isReamed)
    {
        (double lowest, double highest) = isReamed
            ? BeforeReaming(pin)
            : (pin.DiameterMm, pin.DiameterMm + UpperMm(pin));
        return new PinFit(pin.DiameterMm, pin.Name, Rounded(lowest), Rounded(highest), Rounded(holeMm));
    }

    private static double UpperMm(Pin pin) => H7.First(row => pin.DiameterMm <= row.UpToMm).UpperMm;

    /// <summary>What a hand reamer is left to take, on the diameter.</summary>
    /// <remarks>
    /// Reaming tables: holes to 1/8 in 0.003 to 0.005 in by hand; metric tables 0.08 to 0.20 mm to 3 mm. The same is taken
    /// for larger pins (common practice, no source).
    /// </remarks>
    private static (double LowestMm, double HighestMm) BeforeReaming(Pin pin) =>
        pin.IsInch
            ? (pin.DiameterMm - (0.005 * DrawingUnits.InchMm), pin.DiameterMm - (0.003 * DrawingUnits.InchMm))
            : (pin.DiameterMm - 0.20, pin.DiameterMm - 0.08);

    private static double Rounded(double lengthMm) => Math.Round(lengthMm, 9);
}
