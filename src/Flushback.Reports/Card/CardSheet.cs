using Flushback.Mechanism.Plans;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Card;

/// <summary>What a card says, before it is laid out.</summary>
internal sealed record CardSheet
{
    public required string Name { get; init; }

    public required string Verdict { get; init; }

    public required bool ReachesTargets { get; init; }

    /// <summary>Names of the stops whose readings are told; open is where the dial is set to zero.</summary>
    public required IReadOnlyList<string> Stops { get; init; }

    /// <summary>The start and the passes, in their order.</summary>
    public required IReadOnlyList<CardRow> Rows { get; init; }

    /// <summary>What keeps the plan from its targets, each in a sentence.</summary>
    public required IReadOnlyList<string> Obstacles { get; init; }

    public required string Notes { get; init; }

    public required string Cautions { get; init; }

    public static CardSheet Of(string name, PlanReport plan)
    {
        PlanSheet sheet = PlanSheet.Of(name, plan, Measure.Typeset);
        return new CardSheet
        {
            Name = sheet.Name,
            Verdict = sheet.Verdict,
            ReachesTargets = sheet.ReachesTargets,
            Stops = sheet.Stops,
            Rows = [.. sheet.Steps.Select(CardRow.Of)],
            Obstacles = [.. sheet.Obstacles.Select(obstacle => obstacle.Sentence)],
            Notes =
                "Set the dial to zero with the blade open before every reading. Readings are in thousandths of an inch and, in"
                + " brackets, in millimetres; plus is proud. "
                + sheet.Ends
                + " When a reading is not as expected, plan again from what you read.",
            Cautions = string.Join(" ", Sheets.Cautions.AtTheBench),
        };
    }
}

/// <summary>A row of a card: the start, or a pass.</summary>
/// <param name="Number">Number of the pass; empty at the start.</param>
/// <param name="Title">What is done, with a capital.</param>
/// <param name="Amount">By how much; empty at the start.</param>
/// <param name="Readings">What the dial is to show after it at each stop that is told.</param>
internal sealed record CardRow(string Number, string Title, string Amount, IReadOnlyList<CardReading> Readings)
{
    public static CardRow Of(StepSheet step) =>
        new(
            step.Number == 0 ? "" : FormattableString.Invariant($"{step.Number}"),
            char.ToUpperInvariant(step.Title[0]) + step.Title[1..],
            step.Amount,
            [.. step.Stops.Skip(1).Select(stop => new CardReading(stop.Thou, $"({stop.Mm})"))]
        );
}

/// <summary>A reading to expect, in thousandths of an inch and in millimetres.</summary>
internal sealed record CardReading(string Thou, string Mm);
