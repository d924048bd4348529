using Flushback.Contract.V1;
using Google.Protobuf.Reflection;

namespace Flushback.Cli.Patterns;

/// <summary>How the fields of the contract are spelt in a page of dimensions: with hyphens and without their units.</summary>
internal static class PatternKeys
{
    private static readonly string[] _units = ["_mm", "_deg"];

    /// <summary>The key of a field: <c>closed-length</c> for <c>closed_length_mm</c>.</summary>
    public static string Of(string field) => WithoutUnit(field).Replace('_', '-');

    /// <summary>The field of a key, which may also be spelt as in the contract; null when there is none.</summary>
    public static FieldDescriptor? Find(MessageDescriptor message, string key) =>
        message
            .Fields.InDeclarationOrder()
            .FirstOrDefault(field => string.Equals(Of(field.Name), Of(key.Trim()), StringComparison.OrdinalIgnoreCase));

    /// <summary>The numbers that a group, or a group and a key, name: <c>spring.preload_mm</c> for <c>spring.preload</c>.</summary>
    public static IReadOnlyList<string> FieldsOf(string word)
    {
        string[] parts = word.Split('.');
        if (parts.Length > 2 || Find(Pattern.Descriptor, parts[0]) is not { } group)
        {
            return [];
        }

        return
        [
            .. group
                .MessageType.Fields.InDeclarationOrder()
                .Where(field => field.FieldType == FieldType.Double)
                .Where(field => parts.Length == 1 || field == Find(group.MessageType, parts[1]))
                .Select(field => $"{group.Name}.{field.Name}"),
        ];
    }

    /// <summary>What to say of a key that there is none of: the nearest one, or all of them.</summary>
    public static string Advice(IReadOnlyList<string> known, string key)
    {
        string nearest = known.MinBy(other => Distance(key.ToLowerInvariant(), other))!;
        return Distance(key.ToLowerInvariant(), nearest) <= Math.Max(2, nearest.Length / 3)
            ? $"did you mean '{nearest}'?"
            : $"there are {string.Join(", ", known)}.";
    }

    private static string WithoutUnit(string field) =>
        _units.FirstOrDefault(unit => field.EndsWith(unit, StringComparison.OrdinalIgnoreCase)) is { } unit
            ? field[..^unit.Length]
            : field;

    // The fewest letters put in, left out or changed (Levenshtein), row by row.
    private static int Distance(string from, string to)
    {
        int[] row = [.. Enumerable.Range(0, to.Length + 1)];
        for (int i = 1; i <= from.Length; i++)
        {
            int diagonal = row[0];
            row[0] = i;
            for (int j = 1; j <= to.Length; j++)
            {
                int changed = diagonal + (from[i - 1] == to[j - 1] ? 0 : 1);
                diagonal = row[j];
                row[j] = Math.Min(changed, Math.Min(row[j], row[j - 1]) + 1);
            }
        }

        return row[^1];
    }
}
