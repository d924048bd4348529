using System.Collections;
using System.Globalization;
using Flushback.Service.Errors;
using Google.Protobuf;
using Google.Protobuf.Reflection;

namespace Flushback.Service.Validation;

/// <summary>
/// What holds for every field of every request, found from the contract itself so that a new field cannot escape it:
/// numbers are finite, lengths are inside the coordinate range, enum values are known.
/// </summary>
/// <param name="largestMm">Largest length or coordinate either way, in millimetres.</param>
/// <param name="violations">Gathers what is wrong.</param>
internal sealed class FieldRules(double largestMm, Violations violations)
{
    /// <summary>Looks at every field of a message and of the messages in it.</summary>
    /// <param name="message">A request, or part of one.</param>
    /// <param name="path">Where it stands; null for the request itself.</param>
    public void Check(IMessage message, FieldPath? path = null)
    {
        foreach (FieldDescriptor field in message.Descriptor.Fields.InDeclarationOrder())
        {
            if (field.IsRepeated)
            {
                CheckAll(field, (IList)field.Accessor.GetValue(message), path);
            }
            else if (!field.HasPresence || field.Accessor.HasValue(message))
            {
                CheckValue(field, field.Accessor.GetValue(message), new FieldPath(path, field.Name));
            }
        }
    }

    private void CheckAll(FieldDescriptor field, IList values, FieldPath? path)
    {
        for (int i = 0; i < values.Count; i++)
        {
            CheckValue(field, values[i]!, new FieldPath(path, field.Name, i));
        }
    }

    private void CheckValue(FieldDescriptor field, object value, FieldPath path)
    {
        switch (field.FieldType)
        {
            case FieldType.Message:
                Check((IMessage)value, path);
                break;
            case FieldType.Double:
                CheckNumber(field, (double)value, path);
                break;
            case FieldType.Enum when field.EnumType.FindValueByNumber((int)value) is null:
                violations.Add(
                    $"{path}",
                    "UNKNOWN_VALUE",
                    Sentence($"{path} is {(int)value}, which this version of the contract does not know.")
                );
                break;
        }
    }

    private void CheckNumber(FieldDescriptor field, double value, FieldPath path)
    {
        if (!double.IsFinite(value))
        {
            violations.Add(
                $"{path}",
                "NOT_FINITE",
                Sentence($"{path} is {value}, but every number must be a finite one.")
            );
        }
        else if (Math.Abs(value) > largestMm && field.Name.EndsWith("_mm", StringComparison.Ordinal))
        {
            violations.Add(
                $"{path}",
                "OUT_OF_RANGE",
                Sentence(
                    $"{path} is {value:R} mm, beyond the {largestMm:N0} mm either way that are read; move the drawing to the origin and check its unit."
                )
            );
        }
    }

    private static string Sentence(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
