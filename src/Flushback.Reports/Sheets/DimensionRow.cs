using Flushback.Patterns;
using Flushback.Patterns.Parameters;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>One dimension of a pattern, in words.</summary>
/// <param name="Name">Its name, such as <c>tang height</c>.</param>
/// <param name="Value">Its value: millimetres with three decimals, or degrees with their unit.</param>
/// <param name="Thou">The same in thousandths of an inch; empty for an angle.</param>
/// <param name="Origin">Whether it was given, is the default, or was found from others.</param>
/// <param name="IsDefault">True when it was neither given nor found from others.</param>
internal sealed record DimensionRow(string Name, string Value, string Thou, string Origin, bool IsDefault)
{
    // Angles are told to a hundredth of a degree, as everywhere.
    private const int DegreeDecimals = 2;

    /// <summary>Every number of a pattern, in the order of the table.</summary>
    public static IReadOnlyList<DimensionRow> Of(DrawnPattern pattern, Measure measure) =>
        [.. PatternLimits.All.Select(limit => Of(limit, pattern, measure)).OfType<DimensionRow>()];

    /// <summary>What kind of knife it is.</summary>
    public static string Kind(PatternParameters dimensions) =>
        $"{Capital(WordsOf(dimensions.Blade.Family))} blade, {(dimensions.Tang.HasHalfStop ? "tang with a half stop" : "round tang without a half stop")}";

    /// <summary>A sentence on the dimensions that keep their defaults; null when there are none.</summary>
    public static string? Untold(IReadOnlyList<DimensionRow> rows)
    {
        int left = rows.Count(row => row.IsDefault);
        return left switch
        {
            0 => null,
            1 => "One more keeps its default.",
            _ => FormattableString.Invariant($"{left} more keep their defaults."),
        };
    }

    private static DimensionRow? Of(PatternLimit limit, DrawnPattern pattern, Measure measure)
    {
        if (limit.Read(pattern.Dimensions) is not { } value)
        {
            return null;
        }

        double? given = limit.Read(pattern.Parameters);
        bool isDefault = given is not null && given == limit.Default;
        string origin =
            isDefault ? "default"
            : given is null ? "solved"
            : "given";
        return limit.Unit == "mm"
            ? new DimensionRow(limit.Name, measure.Mm(value), measure.Thou(value), origin, isDefault)
            : new DimensionRow(limit.Name, $"{measure.Number(value, DegreeDecimals)} deg", "", origin, isDefault);
    }

    private static string WordsOf(BladeFamily family) =>
        family switch
        {
            BladeFamily.ClipPoint => "clip point",
            BladeFamily.DropPoint => "drop point",
            BladeFamily.SpearPoint => "spear point",
            BladeFamily.Sheepsfoot => "sheepsfoot",
            BladeFamily.Wharncliffe => "wharncliffe",
            _ => "pen",
        };

    private static string Capital(string words) => char.ToUpperInvariant(words[0]) + words[1..];
}
