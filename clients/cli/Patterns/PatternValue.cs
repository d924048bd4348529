using System.Globalization;
using Flushback.Cli.Arguments;
using Google.Protobuf.Reflection;

namespace Flushback.Cli.Patterns;

/// <summary>The value of a dimension as text: a length, an angle, yes or no, or one of several words.</summary>
internal static class PatternValue
{
    private const string Degrees = "deg";

    /// <summary>Reads a value.</summary>
    /// <param name="field">The field it is for.</param>
    /// <param name="text">What stands behind the colon.</param>
    /// <param name="complaint">What is wrong with the text, when it is no such value.</param>
    /// <returns>The value as the field takes it; null when the text is none.</returns>
    public static object? Read(FieldDescriptor field, string text, out string complaint)
    {
        string key = PatternKeys.Of(field.Name);
        (object? value, string expected) = field.FieldType switch
        {
            FieldType.Bool => (YesOrNo(text), "write yes or no"),
            FieldType.Enum => Word(field.EnumType, text),
            _ when field.Name.EndsWith("_deg", StringComparison.Ordinal) => (
                Angle(text),
                "write degrees, such as 80 or 80 deg"
            ),
            _ => (LengthOf(text), "write a length, such as 3.2, 3.2 mm, 1/8 in or 0.125 in"),
        };
        complaint = $"'{text}' is no {key}; {expected}.";
        return value;
    }

    /// <summary>Writes a value so that <see cref="Read"/> has it again, to the last digit.</summary>
    public static string Write(FieldDescriptor field, object value) =>
        value switch
        {
            bool yes => yes ? "yes" : "no",
            double number => string.Create(
                CultureInfo.InvariantCulture,
                $"{number} {(field.Name.EndsWith("_deg", StringComparison.Ordinal) ? Degrees : "mm")}"
            ),
            _ => SpeltOf(field.EnumType, Convert.ToInt32(value, CultureInfo.InvariantCulture)),
        };

    private static string SpeltOf(EnumDescriptor words, int number)
    {
        string prefix = words.Values[0].Name[..^"UNSPECIFIED".Length];
        return words.FindValueByNumber(number).Name[prefix.Length..].ToLowerInvariant().Replace('_', ' ');
    }

    private static bool? YesOrNo(string text) =>
        text.ToLowerInvariant() switch
        {
            "yes" or "true" => true,
            "no" or "false" => false,
            _ => null,
        };

    private static (object? Value, string Expected) Word(EnumDescriptor words, string text)
    {
        // The first says that nothing was said. A value is named by its type and its word: BLADE_FAMILY_CLIP_POINT.
        EnumValueDescriptor[] known = [.. words.Values.Skip(1)];
        string prefix = words.Values[0].Name[..^"UNSPECIFIED".Length];
        string asked = text.Trim().Replace(' ', '_').Replace('-', '_');
        EnumValueDescriptor? found = Array.Find(
            known,
            value => value.Name[prefix.Length..].Equals(asked, StringComparison.OrdinalIgnoreCase)
        );
        string[] spelt = [.. known.Select(value => value.Name[prefix.Length..].ToLowerInvariant().Replace('_', ' '))];
        return (found?.Number, $"write one of {string.Join(", ", spelt)}");
    }

    private static double? Angle(string text) =>
        Number.TryParse(WithoutUnit(text, Degrees), out double degrees) ? degrees : null;

    private static double? LengthOf(string text)
    {
        string length = text.Trim();
        (string number, double unitMm) = Length.SplitUnit(length);
        string joined = unitMm > 0 ? number.TrimEnd() + length[number.Length..] : $"{length}mm";
        return Length.TryParse(joined, out double mm) ? mm : null;
    }

    private static string WithoutUnit(string text, string unit)
    {
        string trimmed = text.Trim();
        return trimmed.EndsWith(unit, StringComparison.OrdinalIgnoreCase) ? trimmed[..^unit.Length].TrimEnd() : trimmed;
    }
}
