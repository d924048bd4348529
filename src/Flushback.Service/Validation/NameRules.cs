using System.Globalization;
using Flushback.Service.Errors;
using Flushback.Service.Limits;

namespace Flushback.Service.Validation;

/// <summary>What must hold for names: of a request, of layers.</summary>
internal static class NameRules
{
    /// <summary>Gathers what is wrong with the name of what is looked at.</summary>
    public static void CheckName(string name, ServiceLimits limits, Violations violations)
    {
        if (name.Length > limits.NameLength)
        {
            violations.Add(
                "name",
                "TOO_LONG",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The name is {name.Length} characters long; shorten it to {limits.NameLength}."
                )
            );
        }

        if (name.Any(char.IsControl))
        {
            violations.Add(
                "name",
                "CONTROL_CHARACTER",
                "The name holds a control character; leave only what can be printed."
            );
        }
    }

    /// <summary>Gathers what is wrong with the name of a layer; an empty one says that none is named.</summary>
    public static void CheckLayer(string layer, FieldPath path, ServiceLimits limits, Violations violations)
    {
        if (layer.Length > limits.NameLength)
        {
            violations.Add(
                $"{path}",
                "TOO_LONG",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The layer name is {layer.Length} characters long; no more than {limits.NameLength} are read."
                )
            );
        }

        if (layer.Any(char.IsControl))
        {
            violations.Add(
                $"{path}",
                "CONTROL_CHARACTER",
                "The layer name holds a control character; no layer has one."
            );
        }
    }
}
