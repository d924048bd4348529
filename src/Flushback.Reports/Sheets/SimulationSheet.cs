using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Passes;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>A simulation in words, before it is laid out: what the terminal and the page have in common.</summary>
internal sealed record SimulationSheet
{
    public required string Name { get; init; }

    public required string Verdict { get; init; }

    public required bool IsInOrder { get; init; }

    public required string Zeroing { get; init; }

    /// <summary>Names of the stops whose readings are told, open apart: the dial stands at zero there.</summary>
    public required IReadOnlyList<string> Stops { get; init; }

    /// <summary>The knife as drawn and after each pass.</summary>
    public required IReadOnlyList<StepSheet> Steps { get; init; }

    public required IReadOnlyList<string> Cautions { get; init; }

    public static SimulationSheet Of(string name, Simulation simulation, Measure measure)
    {
        BenchReport end = simulation.End.Report!;
        return new SimulationSheet
        {
            Name = Printable.Or(name, "Unnamed knife"),
            Verdict = VerdictWords.Of(end),
            IsInOrder = VerdictWords.IsInOrder(end),
            Zeroing =
                "Thou are thousandths of an inch; plus is proud. The dial is set to zero with the blade open after every pass;"
                + " under zero stands how far that has moved it since the knife as drawn.",
            Stops = [.. simulation.Start.Readings.Stops.Skip(1).Select(stop => StopNames.Of(stop.Stop))],
            Steps = StepSheet.AllOf(simulation, "as drawn", measure),
            Cautions = Sheets.Cautions.All,
        };
    }
}
