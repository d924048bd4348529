using Flushback.Patterns;
using Flushback.Patterns.Parameters;
using Flushback.Service.Errors;
using Flushback.Service.Mapping;

namespace Flushback.Service.Validation;

/// <summary>What must hold for a page of dimensions before it is drawn, and what is said when it cannot be.</summary>
internal static class PatternRules
{
    private const string Field = "pattern";

    /// <summary>Gathers numbers outside their limits, and a unit that no drawing is made in here.</summary>
    public static void Check(Wire.GenerateRequest request, Violations violations)
    {
        foreach (PatternConflict outside in PatternLimits.Violations(request.Pattern.ToParameters()))
        {
            string path = $"{Field}.{outside.Parameters[0]}";

            // What is not a number was told already.
            if (!violations.HasField(path))
            {
                violations.Add(path, "OUT_OF_RANGE", outside.Sentence);
            }
        }

        if (request.Unit is not (Wire.LengthUnit.Unspecified or Wire.LengthUnit.Millimetre or Wire.LengthUnit.Inch))
        {
            violations.Add("unit", "NOT_MADE", "Patterns are drawn in millimetres or inches; name one of them.");
        }
    }

    /// <summary>Refuses parameters that do not go together.</summary>
    /// <exception cref="Grpc.Core.RpcException">INVALID_ARGUMENT, the sentence with each parameter in conflict.</exception>
    public static void ThrowIf(PatternConflict? conflict)
    {
        if (conflict is null)
        {
            return;
        }

        Violations violations = new();
        foreach (string path in conflict.Parameters.IsEmpty ? [""] : conflict.Parameters)
        {
            string field = path.Length > 0 ? $"{Field}.{path}" : Field;
            violations.Add(field, "PARAMETERS_IN_CONFLICT", conflict.Sentence);
        }

        violations.ThrowIfAny();
    }
}
