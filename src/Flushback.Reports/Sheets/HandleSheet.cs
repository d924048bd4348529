using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Materials;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>The handle in words, before it is laid out.</summary>
internal sealed record HandleSheet
{
    public required string Assumed { get; init; }

    public required IReadOnlyList<HandleStopRow> Stops { get; init; }

    public required IReadOnlyList<HandleContactRow> Contacts { get; init; }

    public required IReadOnlyList<Fact> Facts { get; init; }

    public required IReadOnlyList<SensitivityRow> Sensitivities { get; init; }

    public required string InProportion { get; init; }

    /// <summary>The rotation every 15 degrees.</summary>
    public required IReadOnlyList<HandleSampleRow> Rotation { get; init; }

    /// <summary>The stress along the spring every 10 mm.</summary>
    public required IReadOnlyList<StressRow> Stress { get; init; }

    public required string Limits { get; init; }

    /// <summary>Puts a report into words.</summary>
    public static HandleSheet Of(HandleReport report, Measure measure) =>
        new()
        {
            Assumed = AssumedIn(report, measure),
            Stops = [.. report.Stops.Select(stop => HandleStopRow.Of(stop, measure))],
            Contacts = HandleContactRow.AllOf(report, measure),
            Facts = [.. HandleFacts.Of(report, measure)],
            Sensitivities = SensitivityRow.AllOf(report, measure),
            InProportion =
                "Forces, pull and torques are in proportion to the spring's width, stresses do not depend on it; all of them"
                + $" are in proportion to the modulus, {ModulusOf(report.Settings.SpringSteel, measure)}.",
            Rotation = HandleSampleRow.AllOf(report, measure),
            Stress = StressRow.AllOf(report, measure),
            Limits =
                "What is computed: a beam through both pins, with a stiff nose, in bending alone; the net section at the pins'"
                + " holes without stress raisers; friction is felt by the hand but does not bend the spring. The tail behind"
                + " the rear pin is left aside, and so is an edge that runs into the belly.",
        };

    /// <summary>The bench report with the handle's findings among its own, worst first.</summary>
    public static BenchReport Together(BenchReport bench, HandleReport? handle) =>
        handle is null
            ? bench
            : bench with
            {
                Findings = [.. bench.Findings.Concat(handle.Findings).OrderByDescending(finding => finding.Severity)],
            };

    private static string ModulusOf(Steel steel, Measure measure)
    {
        (double low, double high) = (steel.ModulusMpa.Low / 1000, steel.ModulusMpa.High / 1000);
        string used = $"here {measure.Number(steel.ModulusUsedMpa / 1000, 0)} GPa";
        return low < high ? $"{used} of the {measure.Number(low, 0)} to {measure.Number(high, 0)} published" : used;
    }

    private static string AssumedIn(HandleReport report, Measure measure)
    {
        SpringFigures spring = report.Spring;
        HandleSettings settings = report.Settings;
        Sensitivity nose = report.Sensitivities.Single(row => row.Of == Dimension.StiffNose);
        return $"Spring of {settings.SpringSteel.Designation} at {measure.Number(settings.SpringHardnessHrc, 1)} HRC,"
            + $" {measure.Length(settings.WidthMm)} wide; preload"
            + $" {measure.Length(spring.PreloadMm)} over the pivot. The nose is taken as stiff from"
            + $" {measure.Number(spring.StiffNoseMm, 1)} mm behind the pivot; were that a millimetre more, the"
            + $" pull would change by {measure.Change(nose.PullNPerMm, 2)} N, the peak stress by"
            + $" {measure.Change(nose.StressMpaPerMm, 0)} MPa and the lift by {measure.Change(nose.LiftPerMm, 3)} mm at most.";
    }
}
