using System.Collections.Immutable;
using System.Globalization;
using Flushback.Dxf;
using Flushback.Geometry;

namespace Flushback.Inspection.Wording;

/// <summary>Lengths, places and entities as a finding's sentence words them.</summary>
internal static class Said
{
    /// <summary>So many entities are named; the rest is counted.</summary>
    private const int MostNamed = 4;

    /// <summary>A length in millimetres and inches.</summary>
    public static string Length(double lengthMm) =>
        $"{Number(lengthMm, 4)} mm ({Number(lengthMm / DrawingUnits.InchMm, 5)} in)";

    /// <summary>A width and a height in both units.</summary>
    public static string Size(Box box) =>
        $"{Number(box.WidthMm, 2)} x {Number(box.HeightMm, 2)} mm "
        + $"({Number(box.WidthMm / DrawingUnits.InchMm, 3)} x {Number(box.HeightMm / DrawingUnits.InchMm, 3)} in)";

    /// <summary>A place in millimetres, in the drawing's own frame.</summary>
    public static string At(Point at) => $"({Number(at.X, 3)}, {Number(at.Y, 3)})";

    /// <summary>An angle.</summary>
    public static string Degrees(Angle angle) => $"{Number(angle.Degrees, 1)} degrees";

    /// <summary>A whole number.</summary>
    public static string Whole(int value) => value.ToString(CultureInfo.InvariantCulture);

    /// <summary>A count and its noun: <c>1 arc</c>, <c>3 arcs</c>.</summary>
    public static string Count(int count, string one, string many) => $"{Whole(count)} {(count == 1 ? one : many)}";

    /// <summary>Entities by their handles: <c>entity 2F</c>, <c>entities 2F, 30 and 5 more</c>.</summary>
    public static string Entities(ImmutableArray<string> names)
    {
        if (names.Length <= 1)
        {
            return names.IsEmpty ? "an entity" : $"entity {names[0]}";
        }

        int shown = names.Length <= MostNamed + 1 ? names.Length : MostNamed;
        bool isWhole = shown == names.Length;
        string listed = string.Join(", ", names.Take(isWhole ? shown - 1 : shown));
        return $"entities {listed} and {(isWhole ? names[^1] : $"{Whole(names.Length - shown)} more")}";
    }

    /// <summary>A bare number with so many decimals at most.</summary>
    public static string Number(double value, int decimals)
    {
        double rounded = Math.Round(value, decimals);
        return rounded == 0 && value != 0
            ? value.ToString("0.#e0", CultureInfo.InvariantCulture)
            : rounded.ToString("0.######", CultureInfo.InvariantCulture);
    }
}
