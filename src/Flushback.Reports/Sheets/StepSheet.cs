using System.Globalization;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>The knife before the first pass or after one, in words.</summary>
internal sealed record StepSheet
{
    /// <summary>0 as drawn, then the number of the pass.</summary>
    public required int Number { get; init; }

    public required string Title { get; init; }

    public required string Amount { get; init; }

    public required IReadOnlyList<StepStopRow> Stops { get; init; }

    /// <summary>How far the zero has moved since the first pass; empty before it.</summary>
    public required string ZeroThou { get; init; }

    public required string ZeroMm { get; init; }

    /// <summary>Area taken off, in square millimetres; empty before the first pass.</summary>
    public required string AreaMm2 { get; init; }

    /// <summary>What came off at the contacts there were; empty where none lost anything.</summary>
    public required IReadOnlyList<Fact> Depths { get; init; }

    public required IReadOnlyList<string> New { get; init; }

    public required IReadOnlyList<string> Settled { get; init; }

    public required IReadOnlyList<string> Cautions { get; init; }

    /// <summary>The knife before the first pass, under the title given, and after each.</summary>
    public static IReadOnlyList<StepSheet> AllOf(Simulation simulation, string start, Measure measure)
    {
        List<StepSheet> steps = [Of(0, simulation.Start, start, measure)];
        foreach (SimulationStep step in simulation.Steps)
        {
            steps.Add(Of(steps.Count, step, PassWords.Title(step.Pass!), measure));
        }

        return steps;
    }

    private static StepSheet Of(int number, SimulationStep step, string title, Measure measure) =>
        new()
        {
            Number = number,
            Title = title,
            Amount = step.Pass is { } pass ? PassWords.Amount(pass, measure) : "",
            Stops = [.. step.Readings.Stops.Zip(step.RawLiftsMm, (stop, raw) => StepStopRow.Of(stop, raw, measure))],
            ZeroThou = step.Pass is null ? "" : measure.SignedThou(step.RawLiftsMm[0]),
            ZeroMm = step.Pass is null ? "" : measure.SignedMm(step.RawLiftsMm[0]),
            AreaMm2 = step.Removed is { } removed ? measure.Number(removed.AreaMm2, 3) : "",
            Depths = step.Removed is { } metal ? [.. DepthsOf(metal, measure)] : [],
            New = [.. step.NewFindings.Select(Told)],
            Settled = [.. step.SettledFindings.Select(Told)],
            Cautions = step.Cautions,
        };

    private static IEnumerable<Fact> DepthsOf(RemovedMetal removed, Measure measure) =>
        removed
            .Depths.Where(depth => depth.DepthMm > 0)
            .Select(depth => new Fact(
                $"off at the {FaceOf(removed.Part, depth.Contact)} {StopNames.At(depth.Stop)}",
                measure.Length(depth.DepthMm)
            ));

    private static string FaceOf(Part part, Contact contact) =>
        part == Part.Blade ? FaceNames.Of(contact.BladeFace) : FaceNames.Of(contact.SpringFace);

    private static string Told(Finding finding) =>
        string.Create(CultureInfo.InvariantCulture, $"{VerdictWords.Of(finding.Severity)}: {finding.Message}");
}

/// <summary>The dial at one stop after a pass, in words.</summary>
internal sealed record StepStopRow
{
    public required string Name { get; init; }

    public required string Thou { get; init; }

    public required string Mm { get; init; }

    public required string RawThou { get; init; }

    public required string RawMm { get; init; }

    public required string RestsAt { get; init; }

    public required string Verdict { get; init; }

    public required bool IsGood { get; init; }

    public required string Contacts { get; init; }

    public static StepStopRow Of(StopReading stop, double rawMm, Measure measure) =>
        new()
        {
            Name = StopNames.Of(stop.Stop),
            Thou = measure.SignedThou(stop.LiftMm),
            Mm = measure.SignedMm(stop.LiftMm),
            RawThou = measure.SignedThou(rawMm),
            RawMm = measure.SignedMm(rawMm),
            RestsAt = stop.Rests ? measure.DegreesOnly(stop.RestAngle) : "no rest",
            Verdict = VerdictWords.Of(stop, measure),
            IsGood = stop.Verdict == ReadingVerdict.Good,
            Contacts = stop.Contacts.IsEmpty
                ? "none"
                : string.Join(
                    "; ",
                    stop.Contacts.Select(contact => FaceNames.Of(contact.BladeFace, contact.SpringFace))
                ),
        };
}
