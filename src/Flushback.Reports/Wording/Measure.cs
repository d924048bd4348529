using System.Globalization;
using Flushback.Dxf;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;

namespace Flushback.Reports.Wording;

/// <summary>Writes lengths and angles the way a maker reads them: thousandths of an inch beside millimetres.</summary>
/// <remarks>
/// The one place where a report turns a number into words, always in the invariant culture. A value that rounds to
/// zero never shows a minus; a signed one shows <c>+</c>, so that a reading always has its sign.
/// </remarks>
public sealed class Measure
{
    /// <summary>Millimetres in a thousandth of an inch.</summary>
    public const double MmPerThou = StopTargets.MmPerThou;

    // A pound of 0.45359237 kg in standard gravity; a thousand of them on a square inch.
    private const double NewtonsPerPound = 0.45359237 * 9.80665;
    private const double MpaPerKsi = 1000 * NewtonsPerPound / (DrawingUnits.InchMm * DrawingUnits.InchMm);

    private readonly string _minus;
    private readonly string _degree;
    private readonly string _times;
    private readonly string _square;

    private Measure(string minus, string degree, string times, string square, string eitherSide)
    {
        (_minus, _degree, _times, _square) = (minus, degree, times, square);
        EitherSide = eitherSide;
    }

    /// <summary>Seven-bit characters only: terminals, files for other programs.</summary>
    public static Measure Plain { get; } = new("-", " deg", "x", "2", "+-");

    /// <summary>With the minus, degree, times and square signs of print: pages and pictures.</summary>
    public static Measure Typeset { get; } = new("\u2212", "\u00b0", "\u00d7", "\u00b2", "\u00b1");

    /// <summary>What stands before half the width of a window: to both sides.</summary>
    public string EitherSide { get; }

    /// <summary>A reading in thousandths of an inch to a tenth, with its sign and without its unit.</summary>
    public string SignedThou(double mm) => Signed(mm / MmPerThou, 1);

    /// <summary>A reading in millimetres to a micrometre, with its sign and without its unit.</summary>
    public string SignedMm(double mm) => Signed(mm, 3);

    /// <summary>A reading in both units: <c>+5.0 thou (+0.127 mm)</c>.</summary>
    public string Reading(double mm) => $"{SignedThou(mm)} thou ({SignedMm(mm)} mm)";

    /// <summary>A size in thousandths of an inch to a tenth, without its unit.</summary>
    public string Thou(double mm) => Number(mm / MmPerThou, 1);

    /// <summary>A size in millimetres, without its unit.</summary>
    public string Mm(double mm, int decimals = 3) => Number(mm, decimals);

    /// <summary>A size in inches, without its unit.</summary>
    public string Inches(double mm, int decimals = 3) => Number(mm / DrawingUnits.InchMm, decimals);

    /// <summary>A small size in both units: <c>0.350 mm (13.8 thou)</c>.</summary>
    public string Length(double mm) => $"{Mm(mm)} mm ({Thou(mm)} thou)";

    /// <summary>The rate of a spring in both units: <c>74.1 N/mm (423 lbf/in)</c>.</summary>
    public string Rate(double newtonsPerMm) =>
        $"{Number(newtonsPerMm, 1)} N/mm ({Number(newtonsPerMm * DrawingUnits.InchMm / NewtonsPerPound, 0)} lbf/in)";

    /// <summary>A size of the whole knife in both units: <c>98.2 mm (3.866 in)</c>.</summary>
    public string LongLength(double mm) => $"{Mm(mm, 1)} mm ({Number(mm / DrawingUnits.InchMm, 3)} in)";

    /// <summary>A force in both units: <c>11.5 N (2.6 lbf)</c>.</summary>
    public string Force(double newtons) => $"{Number(newtons, 1)} N ({Number(newtons / NewtonsPerPound, 1)} lbf)";

    /// <summary>A stress in both units: <c>816 MPa (118 ksi)</c>.</summary>
    public string Stress(double mpa) => $"{Number(mpa, 0)} MPa ({Number(mpa / MpaPerKsi, 0)} ksi)";

    /// <summary>A change with its sign and without its unit.</summary>
    public string Change(double value, int decimals) => Signed(value, decimals);

    /// <summary>Width by height of a box in millimetres and inches.</summary>
    public string Size(Box box) =>
        $"{Mm(box.WidthMm, 1)} {_times} {Mm(box.HeightMm, 1)} mm"
        + $" ({Number(box.WidthMm / DrawingUnits.InchMm, 3)} {_times} {Number(box.HeightMm / DrawingUnits.InchMm, 3)} in)";

    /// <summary>A place in millimetres to a hundredth: <c>x -4.00, y 4.12</c>.</summary>
    public string Place(Point point) => $"x {Mm(point.X, 2)}, y {Mm(point.Y, 2)}";

    /// <summary>A place in both units: <c>x -4.00, y 4.12 mm (x -0.157, y 0.162 in)</c>.</summary>
    public string PlaceInBoth(Point point) => $"{Place(point)} mm (x {Inches(point.X)}, y {Inches(point.Y)} in)";

    /// <summary>An area in both units: <c>812.3 mm2 (1.259 in2)</c>.</summary>
    public string Area(double mm2) => $"{Number(mm2, 1)} mm{_square} ({SquareInches(mm2)} in{_square})";

    /// <summary>A small area: <c>0.312 mm2</c>.</summary>
    public string SquareMm(double mm2) => $"{Number(mm2, 3)} mm{_square}";

    /// <summary>An area in square inches, without its unit.</summary>
    public string SquareInches(double mm2) => Number(mm2 / (DrawingUnits.InchMm * DrawingUnits.InchMm), 3);

    /// <summary>Width by height of a box in millimetres, without the unit.</summary>
    public string MmByMm(Box box) => $"{Mm(box.WidthMm, 2)} {_times} {Mm(box.HeightMm, 2)}";

    /// <summary>Width by height of a box in inches, without the unit.</summary>
    public string InchesByInches(Box box) => $"{Inches(box.WidthMm)} {_times} {Inches(box.HeightMm)}";

    /// <summary>An angle in degrees, without its unit.</summary>
    public string DegreesOnly(Angle angle, int decimals = 2) => Number(angle.Degrees, decimals);

    /// <summary>An angle in degrees with its unit.</summary>
    public string Degrees(Angle angle, int decimals = 2) => DegreesOnly(angle, decimals) + _degree;

    /// <summary>A bare number, rounded half away from zero, with all its decimals.</summary>
    public string Number(double value, int decimals) => Text(value, decimals, "");

    private string Signed(double value, int decimals) => Text(value, decimals, "+");

    private string Text(double value, int decimals, string plus)
    {
        string digits = Math.Abs(value)
            .ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        bool isZero = digits.All(c => c is '0' or '.');
        return (value < 0 && !isZero ? _minus : plus) + digits;
    }
}
