namespace Flushback.Dxf;

/// <summary>What a <see cref="DrawingUnit"/> is worth and what it is called.</summary>
public static class DrawingUnits
{
    /// <summary>Millimetres in an inch, by definition.</summary>
    public const double InchMm = 25.4;

    private const double SurveyFootMm = 1200000.0 / 3937.0;

    /// <summary>Millimetres in one unit.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value is no member of the enum.</exception>
    public static double Millimetres(this DrawingUnit unit) =>
        unit switch
        {
            DrawingUnit.Inch => InchMm,
            DrawingUnit.Foot => 12 * InchMm,
            DrawingUnit.Mile => 1609344,
            DrawingUnit.Millimetre => 1,
            DrawingUnit.Centimetre => 10,
            DrawingUnit.Metre => 1e3,
            DrawingUnit.Kilometre => 1e6,
            DrawingUnit.Microinch => InchMm / 1e6,
            DrawingUnit.Thou => InchMm / 1e3,
            DrawingUnit.Yard => 36 * InchMm,
            DrawingUnit.Angstrom => 1e-7,
            DrawingUnit.Nanometre => 1e-6,
            DrawingUnit.Micrometre => 1e-3,
            DrawingUnit.Decimetre => 100,
            DrawingUnit.Decametre => 1e4,
            DrawingUnit.Hectometre => 1e5,
            DrawingUnit.Gigametre => 1e12,
            DrawingUnit.AstronomicalUnit => 149597870700e3,
            DrawingUnit.LightYear => 9460730472580800e3,
            // 648000 / pi astronomical units.
            DrawingUnit.Parsec => 648000 / Math.PI * 149597870700e3,
            DrawingUnit.SurveyFoot => SurveyFootMm,
            DrawingUnit.SurveyInch => SurveyFootMm / 12,
            DrawingUnit.SurveyYard => 3 * SurveyFootMm,
            DrawingUnit.SurveyMile => 5280 * SurveyFootMm,
            _ => throw new ArgumentOutOfRangeException(nameof(unit), unit, "Not a unit of length."),
        };

    /// <summary>True for inches, feet and their kin; false for metric units.</summary>
    public static bool IsInchBased(this DrawingUnit unit) =>
        unit
            is DrawingUnit.Inch
                or DrawingUnit.Foot
                or DrawingUnit.Mile
                or DrawingUnit.Microinch
                or DrawingUnit.Thou
                or DrawingUnit.Yard
                or DrawingUnit.SurveyFoot
                or DrawingUnit.SurveyInch
                or DrawingUnit.SurveyYard
                or DrawingUnit.SurveyMile;
}
