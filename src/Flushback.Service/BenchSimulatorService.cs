using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Measured;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;
using Flushback.Service.Artifacts;
using Flushback.Service.Drawings;
using Flushback.Service.Limits;
using Flushback.Service.Mapping;
using Flushback.Service.Validation;
using Grpc.Core;

namespace Flushback.Service;

/// <summary>Makes passes on a drawing and plans them: validates, computes, maps. It keeps nothing between calls.</summary>
public sealed class BenchSimulatorService(RequestValidator validator, KnifeReader reader, ServiceLimits limits)
    : Wire.BenchSimulator.BenchSimulatorBase
{
    /// <inheritdoc/>
    public override Task<Wire.SimulateResponse> Simulate(Wire.SimulateRequest request, ServerCallContext context)
    {
        using WorkTime time = new(limits, context.CancellationToken);
        validator.Validate(request);
        KnifeSource source = reader.Read(request.Knife, time.Token);
        Placement placement = KnifeFrame.Place(source, time.Token);
        (Simulation? simulation, RefusedPass? refused) = Simulation.Run(
            placement,
            [.. request.Passes.Select(pass => pass.ToPass())],
            request.ToSettings(),
            time.Token
        );
        PassRules.ThrowIf(refused);

        Wire.SimulateReport report = simulation!.ToWire(request, source);
        Wire.SimulateResponse response = new() { Report = report };
        foreach (Wire.ArtifactKind kind in request.Artifacts)
        {
            time.Token.ThrowIfCancellationRequested();
            response.Artifacts.Add(SimulationArtifacts.Make(kind, report, simulation!, source));
        }

        return Task.FromResult(response);
    }

    /// <inheritdoc/>
    public override Task<Wire.PlanResponse> Plan(Wire.PlanRequest request, ServerCallContext context)
    {
        using WorkTime time = new(limits, context.CancellationToken);
        validator.Validate(request);
        KnifeSource source = reader.Read(request.Knife, time.Token);
        PlanRules.ThrowIfNoHandle(request, source);
        Placement placement = KnifeFrame.Place(source, time.Token);
        PlanReport plan = PlanOf(request, placement, time.Token);
        Wire.PlanReport report = plan.ToWire(request, source);
        Wire.PlanResponse response = new() { Report = report };
        foreach (Wire.ArtifactKind kind in request.Artifacts)
        {
            time.Token.ThrowIfCancellationRequested();
            response.Artifacts.Add(PlanArtifacts.Make(kind, report, plan, source));
        }

        return Task.FromResult(response);
    }

    private static PlanReport PlanOf(Wire.PlanRequest request, Placement placement, CancellationToken cancellation)
    {
        if (request.Measured is not { } measured)
        {
            return Planning.Run(placement, request.ToSettings(), cancellation);
        }

        (PlanReport? plan, MeasuredProblem? problem) = Planning.FromMeasured(
            placement,
            measured.ToReadings(),
            request.ToSettings(),
            cancellation
        );
        PlanRules.ThrowIf(problem);
        return plan!;
    }
}
