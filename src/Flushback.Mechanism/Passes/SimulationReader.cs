using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes;

/// <summary>Reads the bench before the first pass and after each.</summary>
internal sealed class SimulationReader(SimulationSettings settings, CancellationToken cancellation)
{
    private const string TipCaution =
        "The tip is cut last, with the finished knife in its handle: what fitting still moves changes how deep it lies.";

    /// <summary>The knife before the first pass.</summary>
    public SimulationStep Start(Placement placement)
    {
        SimulationStep step = Read(placement);

        // What stops now has to stop after every pass, or it is a finding and no round tang.
        Knife knife = placement.Knife with
        {
            HasHalfStop = step.Readings.HasHalfStop,
        };
        return step with
        {
            Placement = placement with { Knife = knife },
            RawLiftsMm = [.. step.Readings.Stops.Select(stop => stop.LiftMm)],
        };
    }

    /// <summary>The knife after a pass.</summary>
    public SimulationStep After(SimulationStep start, SimulationStep before, Pass pass, PassResult result)
    {
        SimulationStep step = Read(before.Placement with { Knife = result.Knife });
        return step with
        {
            Pass = pass,
            Removed = result.Removed,
            RawLiftsMm =
            [
                .. step.Readings.Stops.Select(stop =>
                    result.Knife.LiftMm(start.Readings.OpenRotation, stop.SpringRotation)
                ),
            ],
            NewFindings = Missing(step.Report, before.Report),
            SettledFindings = Missing(before.Report, step.Report),
            Cautions = pass is ShortenTip ? [TipCaution] : [],
        };
    }

    private SimulationStep Read(Placement placement)
    {
        BenchReport? report = settings.JudgesFindings ? BenchCheck.Run(placement, settings.Bench, cancellation) : null;
        StopReadings readings = report is null
            ? StopCheck.Run(placement.Knife, settings.Bench, cancellation).Readings
            : new StopReadings(report.Stops, report.Stops[0].SpringRotation, report.HasHalfStop);
        return new SimulationStep
        {
            Placement = placement,
            Readings = readings,
            RawLiftsMm = [],
            Report = report,
        };
    }

    /// <summary>Findings of one report that another has not.</summary>
    private static ImmutableArray<Finding> Missing(BenchReport? from, BenchReport? inOther) =>
        from is null || inOther is null
            ? []
            :
            [
                .. from.Findings.Where(finding =>
                    !inOther.Findings.Any(other => other.Code == finding.Code && other.Stop == finding.Stop)
                ),
            ];
}
