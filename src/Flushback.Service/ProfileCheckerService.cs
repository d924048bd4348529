using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Service.Artifacts;
using Flushback.Service.Drawings;
using Flushback.Service.Limits;
using Flushback.Service.Mapping;
using Flushback.Service.Validation;
using Grpc.Core;

namespace Flushback.Service;

/// <summary>Reads the dial from outlines: validates, calls the bench, maps. It keeps nothing between calls.</summary>
public sealed class ProfileCheckerService(RequestValidator validator, KnifeReader reader, ServiceLimits limits)
    : Wire.ProfileChecker.ProfileCheckerBase
{
    /// <inheritdoc/>
    public override Task<Wire.CheckResponse> Check(Wire.CheckRequest request, ServerCallContext context)
    {
        using WorkTime time = new(limits, context.CancellationToken);
        validator.Validate(request);
        KnifeSource source = reader.Read(request.Knife, time.Token);
        Placement placement = KnifeFrame.Place(source, time.Token);
        BenchReport bench = BenchCheck.Run(placement, request.Bench.ToSettings(), time.Token);

        Wire.CheckReport report = bench.ToWire(request.Name, source);
        HandleReport? handle = request.Handle is { } asked ? InTheHandle(bench, asked, source, time.Token) : null;
        if (handle is not null)
        {
            report.Add(handle, placement.ToDrawing);
        }

        Wire.CheckResponse response = new() { Report = report };
        foreach (Wire.ArtifactKind kind in request.Artifacts)
        {
            time.Token.ThrowIfCancellationRequested();
            response.Artifacts.Add(ArtifactMaker.Make(kind, report, bench, handle, source));
        }

        return Task.FromResult(response);
    }

    private static HandleReport InTheHandle(
        BenchReport bench,
        Wire.HandleSettings asked,
        KnifeSource source,
        CancellationToken cancellation
    )
    {
        (HandleReport? report, var problems) = HandleCheck.Run(bench, asked.ToSettings(), cancellation);
        KnifeFrame.ThrowIfAny(problems, source);
        return report!;
    }
}
