using Flushback.Patterns;
using Flushback.Patterns.Parameters;
using Flushback.Service.Errors;
using Flushback.Service.Mapping;
using static Flushback.Service.Validation.Ranges;

namespace Flushback.Service.Validation;

/// <summary>What must hold for a second blade before it is drawn.</summary>
internal static class PairRules
{
    private const double LeastFrontMm = 2.5;
    private const double MostFrontMm = 20;
    private const double LeastThicknessMm = 0.5;
    private const double MostThicknessMm = 8;
    private const double MostRoomMm = 5;

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
        foreach (PatternConflict outside in PatternLimits.Violations(PairMapping.PageOf(second).ToParameters()))
        {
            string field = $"second_blade.{outside.Parameters[0]}";
            if (!violations.HasField(field))
            {
                violations.Add(field, "OUT_OF_RANGE", $"Of the second blade: {outside.Sentence}");
            }
        }

        FieldPath path = new(null, "second_blade");
        Ranges ranges = new(violations);
        ranges.Check(path.Of("front_mm"), Set(second.HasFrontMm, second.FrontMm), LeastFrontMm, MostFrontMm);
        ranges.Check(
            path.Of("first_thickness_mm"),
            Set(second.HasFirstThicknessMm, second.FirstThicknessMm),
            LeastThicknessMm,
            MostThicknessMm
        );
        ranges.Check(
            path.Of("thickness_mm"),
            Set(second.HasThicknessMm, second.ThicknessMm),
            LeastThicknessMm,
            MostThicknessMm
        );
        ranges.Check(path.Of("liner_between_mm"), Set(second.HasLinerBetweenMm, second.LinerBetweenMm), 0, MostRoomMm);
        ranges.Check(
            path.Of("least_clearance_mm"),
            Set(second.HasLeastClearanceMm, second.LeastClearanceMm),
            0,
            MostRoomMm
        );
    }
}
