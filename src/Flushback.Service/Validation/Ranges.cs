using System.Globalization;
using Flushback.Service.Errors;

namespace Flushback.Service.Validation;

/// <summary>Holds numbers against their ranges. What is not finite is left to <see cref="FieldRules"/>.</summary>
internal sealed class Ranges(Violations violations)
{
    /// <summary>Smallest number that still means something: a nanometre, a micronewton.</summary>
    public const double LeastAboveZero = 1e-6;

    /// <summary>Gathers a number outside its range, ends included.</summary>
    /// <param name="path">The field.</param>
    /// <param name="value">Its value; null when absent, which is always in order.</param>
    /// <param name="least">Smallest allowed.</param>
    /// <param name="largest">Largest allowed.</param>
    public void Check(FieldPath path, double? value, double least, double largest)
    {
        if (value is { } given && double.IsFinite(given) && (given < least || given > largest))
        {
            violations.Add(
                $"{path}",
                "OUT_OF_RANGE",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"{path} is {given}, but must be from {least} to {largest}."
                )
            );
        }
    }

    /// <summary>The value of an optional field; null when absent.</summary>
    public static double? Set(bool isSet, double value) => isSet ? value : null;
}
