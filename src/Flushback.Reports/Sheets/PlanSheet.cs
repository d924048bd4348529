using System.Globalization;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>A plan in words, before it is laid out: what the terminal, the page and the card have in common.</summary>
internal sealed record PlanSheet
{
    public required string Name { get; init; }

    public required string Verdict { get; init; }

    public required bool ReachesTargets { get; init; }

    public required string Zeroing { get; init; }

    /// <summary>Which end is front and where a depth counts.</summary>
    public required string Ends { get; init; }

    /// <summary>Names of the stops whose readings are told, open apart: the dial stands at zero there.</summary>
    public required IReadOnlyList<string> Stops { get; init; }

    /// <summary>The knife before the first pass and expected after each.</summary>
    public required IReadOnlyList<StepSheet> Steps { get; init; }

    /// <summary>Every stop after the last pass, against what was wanted of it.</summary>
    public required IReadOnlyList<PlannedStopRow> Planned { get; init; }

    /// <summary>What was measured and what explains it; null when the plan starts from the drawing.</summary>
    public required MeasuredFacts? Measured { get; init; }

    public required IReadOnlyList<ObstacleRow> Obstacles { get; init; }

    /// <summary>Why no smaller removal does it.</summary>
    public required IReadOnlyList<Fact> Balance { get; init; }

    /// <summary>Findings that are left after the last pass, each in a sentence.</summary>
    public required IReadOnlyList<string> Left { get; init; }

    public required IReadOnlyList<string> Cautions { get; init; }

    public static PlanSheet Of(string name, PlanReport plan, Measure measure)
    {
        Simulation simulation = plan.Simulation;
        return new PlanSheet
        {
            Name = Printable.Or(name, "Unnamed knife"),
            Verdict = VerdictOf(plan, measure),
            ReachesTargets = plan.ReachesTargets,
            Zeroing =
                "Thou are thousandths of an inch; plus is proud. Set the dial to zero with the blade open after every pass;"
                + " under zero stands how far that will have moved since the start.",
            Ends =
                "Front is the end towards the blade as opened, rear the end towards the handle. A depth counts where the"
                + " spring touches that face at its stop, square to the spring.",
            Stops = [.. simulation.Start.Readings.Stops.Skip(1).Select(stop => StopNames.Of(stop.Stop))],
            Steps = StepSheet.AllOf(simulation, plan.Measured is null ? "as drawn" : "as measured", measure),
            Planned = [.. simulation.End.Readings.Stops.Select(stop => PlannedStopRow.Of(stop, plan, measure))],
            Measured = plan.Measured is { } measured ? MeasuredFacts.Of(measured, measure) : null,
            Obstacles = [.. plan.Obstacles.Select(obstacle => ObstacleRow.Of(obstacle, plan, measure))],
            Balance = [.. BalanceWords.Of(plan, measure)],
            Left =
            [
                .. simulation
                    .End.Report!.Findings.Where(finding => finding.Severity > Severity.Note && !IsTold(finding))
                    .Select(finding => $"{finding.Message} {finding.Advice}"),
            ],
            Cautions = Sheets.Cautions.All,
        };
    }

    // What the dial shows is told against the plan's own targets, and how the parts are drawn is no matter of the bench.
    private static bool IsTold(Finding finding) =>
        finding.Code is FindingCodes.ReadingHigh or FindingCodes.ReadingLow or FindingCodes.DrawnOverlap;

    private static string VerdictOf(PlanReport plan, Measure measure)
    {
        int passes = plan.Simulation.Steps.Length;
        string taken = string.Create(
            CultureInfo.InvariantCulture,
            $"{passes} {(passes == 1 ? "pass takes" : "passes take")} {measure.SquareMm(plan.RemovedMm2)} off"
        );
        return (plan.ReachesTargets, passes) switch
        {
            (true, 0) => "Nothing has to come off: every stop reads as wanted.",
            (true, _) => $"Every stop comes to read as wanted: {taken}.",
            (false, 0) => "Taking metal off does not make every stop read as wanted.",
            (false, _) => $"Taking metal off does not make every stop read as wanted; {taken} and come nearest.",
        };
    }
}

/// <summary>One stop after the last pass of a plan, in words.</summary>
internal sealed record PlannedStopRow
{
    public required string Name { get; init; }

    public required string Thou { get; init; }

    public required string Mm { get; init; }

    public required string WantedThou { get; init; }

    public required string WantedMm { get; init; }

    public required string RestsAt { get; init; }

    public required string Window { get; init; }

    public static PlannedStopRow Of(StopReading stop, PlanReport plan, Measure measure)
    {
        PlanSettings settings = plan.Settings;
        double aim = settings.AimMm(stop.Stop);
        double tolerance = settings.Targets.For(stop.Stop).ToleranceMm;
        Geometry.Angle either = stop.Stop == Stop.Open ? settings.OpenAngleTolerance : settings.RestAngleTolerance;
        return new PlannedStopRow
        {
            Name = StopNames.Of(stop.Stop),
            Thou = measure.SignedThou(stop.LiftMm),
            Mm = measure.SignedMm(stop.LiftMm),
            WantedThou = $"{measure.SignedThou(aim - tolerance)} to {measure.SignedThou(aim + tolerance)}",
            WantedMm = $"{measure.SignedMm(aim - tolerance)} to {measure.SignedMm(aim + tolerance)}",
            RestsAt = stop.Rests ? measure.DegreesOnly(stop.RestAngle) : "no rest",
            Window =
                $"{measure.DegreesOnly(stop.NominalAngle - either, 1)} to {measure.DegreesOnly(stop.NominalAngle + either, 1)}",
        };
    }
}

/// <summary>What keeps a plan from its targets, in words.</summary>
internal sealed record ObstacleRow
{
    public required string Stop { get; init; }

    public required string Sentence { get; init; }

    public required string? Nearest { get; init; }

    public required IReadOnlyList<string> Remedies { get; init; }

    public static ObstacleRow Of(PlanObstacle obstacle, PlanReport plan, Measure measure) =>
        new()
        {
            Stop = StopNames.Of(obstacle.Stop),
            Sentence = obstacle.Sentence,
            Nearest = obstacle.Constraint == PlanConstraint.ReadsLow ? null : NearestTo(obstacle.Stop, plan, measure),
            Remedies = obstacle.Remedies,
        };

    // Where a stop reads low the sentence itself says what it comes to.
    private static string? NearestTo(Stop stop, PlanReport plan, Measure measure) =>
        plan.Simulation.End.Readings.At(stop) is { Rests: true } nearest
            ? $"Nearest that can be reached {StopNames.At(stop)}: {measure.Reading(nearest.LiftMm)} at {measure.Degrees(nearest.RestAngle)}."
            : null;
}
