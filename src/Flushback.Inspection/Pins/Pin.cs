using System.Globalization;
using Flushback.Dxf;

namespace Flushback.Inspection.Pins;

/// <summary>A pin as shops buy it.</summary>
/// <param name="DiameterMm">Nominal diameter.</param>
/// <param name="Name">As shops name it.</param>
/// <param name="IsInch">True for a pin of the inch system.</param>
internal sealed record Pin(double DiameterMm, string Name, bool IsInch)
{
    private const int FinestFraction = 64;

    /// <summary>How near a diameter has to be to a fraction of an inch to be one, in mm: the rounding of three decimals.</summary>
    private const double SameMm = 0.0006;

    /// <summary>The pins of slip joints: 1/16, 3/32 and 1/8 in, and the metric ones next to them (common practice, no source).</summary>
    public static IReadOnlyList<Pin> Usual { get; } =
    [OfInch(1, 16), OfMetric(1.6), OfInch(3, 32), OfMetric(2.4), OfInch(1, 8), OfMetric(3.2)];

    /// <summary>The pin of a diameter: of the inch system when it is a fraction of an inch down to 1/64.</summary>
    public static Pin Of(double diameterMm)
    {
        int sixtyFourths = (int)Math.Round(diameterMm / DrawingUnits.InchMm * FinestFraction);
        double exact = sixtyFourths * DrawingUnits.InchMm / FinestFraction;

        // Twentieths of a millimetre are metric even where a fraction of an inch comes near.
        bool isMetric = Math.Abs((diameterMm * 20) - Math.Round(diameterMm * 20)) < 1e-6;
        if (isMetric || sixtyFourths == 0 || Math.Abs(exact - diameterMm) > SameMm)
        {
            return OfMetric(diameterMm);
        }

        int denominator = FinestFraction;
        for (; sixtyFourths % 2 == 0 && denominator > 1; sixtyFourths /= 2)
        {
            denominator /= 2;
        }

        return OfInch(sixtyFourths, denominator);
    }

    private static Pin OfInch(int numerator, int denominator) =>
        new(
            numerator * DrawingUnits.InchMm / denominator,
            denominator == 1
                ? string.Create(CultureInfo.InvariantCulture, $"{numerator} in")
                : string.Create(CultureInfo.InvariantCulture, $"{numerator}/{denominator} in"),
            IsInch: true
        );

    private static Pin OfMetric(double diameterMm) =>
        new(diameterMm, string.Create(CultureInfo.InvariantCulture, $"{diameterMm:0.####} mm"), IsInch: false);
}
