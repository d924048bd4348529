using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Service.Drawings;

namespace Flushback.Service.Mapping;

/// <summary>A simulation to the contract: degrees, and outlines back on the user's drawing.</summary>
internal static class SimulationMapping
{
    /// <summary>To the contract.</summary>
    /// <param name="simulation">What was simulated, with its findings.</param>
    /// <param name="request">What was asked: name and passes.</param>
    /// <param name="source">How the knife came in.</param>
    public static Wire.SimulateReport ToWire(
        this Simulation simulation,
        Wire.SimulateRequest request,
        KnifeSource source
    )
    {
        Wire.SimulateReport report = new()
        {
            Name = request.Name,
            Start = simulation.Start.ToWire(),
            Reading = ReadingMapping.ToWire(simulation.Start.Report!, source),
        };
        report.Steps.AddRange(simulation.StepsToWire(request.Passes));
        return report;
    }

    /// <summary>The steps to the contract, each with its pass as the contract words it.</summary>
    public static IEnumerable<Wire.SimulationStep> StepsToWire(
        this Simulation simulation,
        IEnumerable<Wire.Pass> passes
    )
    {
        SimulationStep before = simulation.Start;
        foreach ((SimulationStep step, Wire.Pass pass) in simulation.Steps.Zip(passes))
        {
            Wire.SimulationStep wire = step.ToWire();
            wire.Pass = pass;
            wire.Removed = ToWire(step.Removed!, before, step.Placement);
            yield return wire;
            before = step;
        }
    }

    /// <summary>From the frame of a part (blade open, spring as drawn) to the drawing.</summary>
    public static RigidMotion ToDrawing(this Placement placement, Part part) =>
        part == Part.Blade ? Knife.BladeAt(placement.DrawnBladeAngle).Then(placement.ToDrawing) : placement.ToDrawing;

    /// <summary>The knife at one time, without the pass that led to it.</summary>
    public static Wire.SimulationStep ToWire(this SimulationStep step)
    {
        Placement placement = step.Placement;
        RigidMotion toDrawing = placement.ToDrawing;
        Wire.SimulationStep wire = new()
        {
            Verdict = step.Report!.IsClean ? Wire.Verdict.Good : Wire.Verdict.NeedsWork,
            Blade = placement.Knife.Blade.Transformed(placement.ToDrawing(Part.Blade)).ToWire(),
            Spring = placement.Knife.Spring.Transformed(placement.ToDrawing(Part.Spring)).ToWire(),
        };
        wire.Stops.AddRange(step.Readings.Stops.Select(stop => stop.ToWire(toDrawing)));
        wire.RawLiftMm.AddRange(step.RawLiftsMm);
        wire.Findings.AddRange(step.Report.Findings.Select(finding => finding.ToWire(toDrawing)));
        wire.NewFindings.AddRange(step.NewFindings.Select(finding => finding.ToWire(toDrawing)));
        wire.SettledFindings.AddRange(step.SettledFindings.Select(finding => finding.ToWire(toDrawing)));
        wire.Cautions.AddRange(step.Cautions);
        return wire;
    }

    private static Wire.RemovedMetal ToWire(RemovedMetal removed, SimulationStep before, Placement placement)
    {
        RigidMotion toDrawing = placement.ToDrawing(removed.Part);
        Wire.RemovedMetal wire = new() { FromSpring = removed.Part == Part.Spring, AreaMm2 = removed.AreaMm2 };
        wire.Regions.AddRange(removed.Regions.Select(region => region.Transformed(toDrawing).ToWire()));
        int next = 0;
        foreach (StopReading stop in before.Readings.Stops)
        {
            for (int i = 0; i < stop.Contacts.Length; i++, next++)
            {
                wire.Depths.Add(
                    new Wire.ContactDepth
                    {
                        Stop = stop.Stop.ToWire(),
                        ContactIndex = i,
                        DepthMm = removed.Depths[next].DepthMm,
                    }
                );
            }
        }

        return wire;
    }
}
