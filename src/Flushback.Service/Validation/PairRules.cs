using Flushback.Patterns;
using Flushback.Patterns.Pairs;
using Flushback.Patterns.Parameters;
using Flushback.Service.Errors;
using Flushback.Service.Mapping;

namespace Flushback.Service.Validation;

/// <summary>What must hold for a second blade before it is drawn.</summary>
internal static class PairRules
{
    /// <summary>Gathers numbers outside their limits, and what does not go together with a second blade.</summary>
    public static void Check(Wire.GenerateRequest request, Violations violations)
    {
        if (request.SecondBlade is { } second)
        {
            CheckNumbers(second, violations);
        }

        if (!request.HasTwoBlades())
        {
            return;
        }

        if (request.WantsFit())
        {
            violations.Add("fit", "NOT_MADE", "A fit changes a page of one blade; fit each blade by itself first.");
        }

        if (request.Arrangement == Wire.Arrangement.SharedSpring && request.Handle is not null)
        {
            violations.Add(
                "handle",
                "NOT_MADE",
                "A spring with a nose at either end is read on the bench only; leave the handle out, or draw two springs."
            );
        }
    }

    private static void CheckNumbers(Wire.SecondBlade second, Violations violations)
    {
        IEnumerable<PatternConflict> ofEveryBlade = PatternLimits
            .Violations(PairMapping.PageOf(second).ToParameters())
            .Select(outside => outside with { Sentence = $"Of the second blade: {outside.Sentence}" });
        foreach (
            PatternConflict outside in ofEveryBlade.Concat(SecondBladeLimits.Violations(PairMapping.ToSecond(second)))
        )
        {
            // What is not a number was told already.
            string field = $"second_blade.{outside.Parameters[0]}";
            if (!violations.HasField(field))
            {
                violations.Add(field, "OUT_OF_RANGE", outside.Sentence);
            }
        }
    }
}
