using Flushback.Patterns;
using Flushback.Patterns.Fitting;
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

    /// <summary>Gathers what is wrong with what a fit may change.</summary>
    public static void CheckFit(Wire.GenerateRequest request, Violations violations)
    {
        for (int i = 0; i < (request.Fit?.Free.Count ?? 0); i++)
        {
            if (!PatternLimits.Has(request.Fit!.Free[i]))
            {
                violations.Add(
                    FormattableString.Invariant($"fit.free[{i}]"),
                    "UNKNOWN_PARAMETER",
                    "What may be changed is named by its field in Pattern, such as spring.preload_mm; ListPatternParameters lists them."
                );
            }
        }

        if (request.WantsFit() && request.Handle is { PreloadCase: not Wire.HandleSettings.PreloadOneofCase.None })
        {
            violations.Add(
                "handle.preload_mm",
                "CHOSEN_BY_FIT",
                "A fit takes the preload from the page, and may choose it; leave the handle's own preload out."
            );
        }
    }

    /// <summary>Refuses parameters that do not go together, for the reason that a fit of them gives where there was one.</summary>
    /// <inheritdoc cref="ThrowIf(PatternConflict?)"/>
    public static void ThrowIf(PatternConflict? conflict, FittedPattern? fitted) =>
        ThrowIf(conflict is not null && fitted is not null ? conflict with { Sentence = fitted.Sentence } : conflict);

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
