using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Measured;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;
using Flushback.Service.Artifacts;
using Flushback.Service.Drawings;

namespace Flushback.Service.Mapping;

/// <summary>A plan to the contract: degrees, and outlines back on the user's drawing.</summary>
internal static class PlanMapping
{
    /// <summary>To the contract.</summary>
    /// <param name="plan">The plan, with the findings of its steps.</param>
    /// <param name="request">What was asked.</param>
    /// <param name="source">How the knife came in.</param>
    public static Wire.PlanReport ToWire(this PlanReport plan, Wire.PlanRequest request, KnifeSource source)
    {
        Simulation simulation = plan.Simulation;
        Placement end = simulation.End.Placement;
        Wire.PlanReport report = new()
        {
            Name = request.Name,
            ReachesTargets = plan.ReachesTargets,
            Start = simulation.Start.ToWire(),
            Optimum = ToWire(plan.ReachesTargets ? plan.Optimum : null),
            Blade = end.Knife.Blade.Transformed(end.ToDrawing(Part.Blade)).ToWire(),
            Spring = end.Knife.Spring.Transformed(end.ToDrawing(Part.Spring)).ToWire(),
            RemovedMm2 = plan.RemovedMm2,
            Reading = ReadingMapping.ToWire(simulation.Start.Report!, source),
        };
        report.Steps.AddRange(simulation.StepsToWire(simulation.Steps.Select(step => step.Pass!.ToWire())));
        report.Obstacles.AddRange(plan.Obstacles.Select(obstacle => ToWire(obstacle, plan)));
        if (request.Artifacts.Contains(Wire.ArtifactKind.CorrectedDxf))
        {
            report.Layers = CorrectedDrawing.LayersFor(source);
        }

        if (plan.Measured is { } measured)
        {
            report.Offsets.AddRange(measured.Offsets.Select(ToWire));
            report.DrawnStops.AddRange(measured.Drawn.Stops.Select(stop => stop.ToWire(end.ToDrawing)));
        }

        return report;
    }

    private static Wire.PlanObstacle ToWire(PlanObstacle obstacle, PlanReport plan)
    {
        Wire.PlanObstacle wire = new()
        {
            Constraint = ToWire(obstacle.Constraint),
            Stop = obstacle.Stop.ToWire(),
            ShortMm = obstacle.ShortMm,
            WantedMm = plan.Settings.AimMm(obstacle.Stop),
            Message = obstacle.Sentence,
            Remedies = { obstacle.Remedies },
        };
        if (plan.Simulation.End.Readings.At(obstacle.Stop) is { Rests: true } nearest)
        {
            wire.NearestMm = nearest.LiftMm;
        }

        if (obstacle.OpenFlatNeededMm is { } needed)
        {
            wire.OpenFlatNeededMm = needed;
        }

        return wire;
    }

    private static Wire.FaceOffset ToWire(FaceOffset offset) =>
        new()
        {
            Face = offset.Face.ToWire(),
            FrontMm = offset.FrontMm,
            RearMm = offset.RearMm,
        };

    private static Wire.PlanOptimum? ToWire(PlanOptimum? optimum) =>
        optimum is null or { OpenFlatMm: 0, Faces.IsEmpty: true }
            ? null
            : new()
            {
                OpenFlatMm = optimum.OpenFlatMm,
                OpenFlatMm2PerMm = optimum.OpenFlatMm2PerMm,
                Faces =
                {
                    optimum.Faces.Select(face => new Wire.FaceOptimum
                    {
                        Stop = face.Stop.ToWire(),
                        FrontMm = face.FrontMm,
                        RearMm = face.RearMm,
                        Held = ToWire(face.Held),
                        ReadingMultiplierMm2PerMm = face.ReadingMultiplier,
                        HeldMultiplier = face.HeldMultiplier,
                        ResidualMm2PerMm = face.ResidualMm2PerMm,
                    }),
                },
            };

    private static Wire.PlanConstraint ToWire(PlanConstraint constraint) =>
        constraint switch
        {
            PlanConstraint.ReadsLow => Wire.PlanConstraint.ReadsLow,
            PlanConstraint.RestAngle => Wire.PlanConstraint.RestAngle,
            PlanConstraint.TipDepth => Wire.PlanConstraint.TipDepth,
            PlanConstraint.NoRest => Wire.PlanConstraint.NoRest,
            PlanConstraint.Metal => Wire.PlanConstraint.Metal,
            _ => Wire.PlanConstraint.NotSettled,
        };

    private static Wire.TiltHeld ToWire(TiltHeld held) =>
        held switch
        {
            TiltHeld.ByNothing => Wire.TiltHeld.ByNothing,
            TiltHeld.ByFrontDepth => Wire.TiltHeld.ByFrontDepth,
            TiltHeld.ByRearDepth => Wire.TiltHeld.ByRearDepth,
            TiltHeld.ByLeastAngle => Wire.TiltHeld.ByLeastAngle,
            TiltHeld.ByMostAngle => Wire.TiltHeld.ByMostAngle,
            _ => Wire.TiltHeld.ByContacts,
        };
}
