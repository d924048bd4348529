using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Service.Artifacts;
using Flushback.Service.Drawings;
using Flushback.Service.Limits;
using Flushback.Service.Mapping;
using Flushback.Service.Validation;

namespace Flushback.Service.Checks;

/// <summary>A check from request to answer, the same for a single call and for an item of a stream.</summary>
public sealed class KnifeChecker(RequestValidator validator, KnifeReader reader, ServiceLimits limits)
{
    /// <summary>Validates, reads the dial, maps, and makes the files asked for.</summary>
    /// <param name="request">What the caller asks.</param>
    /// <param name="caller">Cancelled when he hangs up or his deadline passes.</param>
    /// <exception cref="Grpc.Core.RpcException">INVALID_ARGUMENT for input that is no knife, RESOURCE_EXHAUSTED over a limit.</exception>
    /// <exception cref="OperationCanceledException">The caller is gone, or the time is over.</exception>
    public Wire.CheckResponse Check(Wire.CheckRequest request, CancellationToken caller)
    {
        using WorkTime time = new(limits, caller);
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

        Wire.CheckResponse response = new()
        {
            Report = report,
            Outlines = request.WithOutlines ? source.Drawn.ToWire() : null,
        };
        foreach (Wire.ArtifactKind kind in request.Artifacts)
        {
            time.Token.ThrowIfCancellationRequested();
            response.Artifacts.Add(ArtifactMaker.Make(kind, report, bench, handle, source));
        }

        return response;
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
