using System.Globalization;
using Flushback.Geometry;

namespace Flushback.Dxf;

/// <summary>Numbers, places and counts as an issue's sentence words them.</summary>
internal static class Wording
{
    /// <summary>A length in millimetres, to the nanometre at most.</summary>
    public static string Mm(double lengthMm) => Number(lengthMm) + " mm";

    /// <summary>A place in millimetres.</summary>
    public static string At(Point atMm) => $"({Number(atMm.X)}, {Number(atMm.Y)})";

    /// <summary>A width and a height in a unit, to four figures or so: enough to tell which unit is meant.</summary>
    public static string Size(double width, double height, string unit) => $"{Rough(width)} x {Rough(height)} {unit}";

    /// <summary>A count and its noun: <c>1 entity</c>, <c>3 entities</c>.</summary>
    public static string Count(int count, string one, string many) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {(count == 1 ? one : many)}");

    /// <summary>A whole number.</summary>
    public static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>A value from the file, made fit to print.</summary>
    public static string Quoted(string text)
    {
        string shown = text.Length > 40 ? text[..40] + "..." : text;
        return "'" + string.Concat(shown.Select(letter => char.IsControl(letter) ? '?' : letter)) + "'";
    }

    /// <summary>A bare number, to six decimals at most.</summary>
    public static string Plain(double value) => Number(value);

    private static string Number(double value) =>
        Math.Abs(value) is >= 1e7 or (> 0 and < 1e-6)
            ? value.ToString("0.###e0", CultureInfo.InvariantCulture)
            : value.ToString("0.######", CultureInfo.InvariantCulture);

    private static string Rough(double value) => value.ToString("G4", CultureInfo.InvariantCulture);
}
