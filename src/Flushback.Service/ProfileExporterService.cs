using Flushback.Service.Artifacts;
using Flushback.Service.Checks;
using Flushback.Service.Limits;
using Flushback.Service.Mapping;
using Grpc.Core;

namespace Flushback.Service;

/// <summary>Draws knives from pages of dimensions: validates, draws, checks, maps. It keeps nothing between calls.</summary>
public sealed class ProfileExporterService(PatternChecker checker, ServiceLimits limits)
    : Wire.ProfileExporter.ProfileExporterBase
{
    /// <inheritdoc/>
    public override Task<Wire.GenerateResponse> Generate(Wire.GenerateRequest request, ServerCallContext context)
    {
        using WorkTime time = new(limits, context.CancellationToken);
        CheckedPattern made = checker.Check(request, time.Token);
        Wire.GenerateResponse response = new()
        {
            Pattern = made.First.Drawn.ToWire(),
            Report = made.First.Report,
            Fitting = made.Fitted?.ToWire(request.Pattern),
            Second = made.Second is { } second ? made.Pair!.ToWire(second.Report) : null,
        };
        PatternArtifacts artifacts = new(request, made.First.Drawn, made.First.Bench, made.First.Handle)
        {
            Fitted = made.Fitted,
            Pair = made.Pair,
            SecondBench = made.Second?.Bench,
            SecondHandle = made.Second?.Handle,
        };
        foreach (Wire.ArtifactKind kind in request.Artifacts)
        {
            time.Token.ThrowIfCancellationRequested();
            response.Artifacts.Add(artifacts.Make(kind, response, time.Token));
        }

        return Task.FromResult(response);
    }

    /// <inheritdoc/>
    public override Task<Wire.ListPatternParametersResponse> ListPatternParameters(
        Wire.ListPatternParametersRequest request,
        ServerCallContext context
    ) =>
        Task.FromResult(
            new Wire.ListPatternParametersResponse
            {
                Parameters = { ParameterListMapping.All },
                BesidePattern = { ParameterListMapping.BesidePattern },
            }
        );
}
