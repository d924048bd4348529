using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Patterns;
using Flushback.Patterns.Fitting;
using Flushback.Patterns.Parameters;
using Flushback.Service.Artifacts;
using Flushback.Service.Drawings;
using Flushback.Service.Limits;
using Flushback.Service.Mapping;
using Flushback.Service.Validation;
using Grpc.Core;

namespace Flushback.Service;

/// <summary>Draws knives from pages of dimensions: validates, draws, checks, maps. It keeps nothing between calls.</summary>
public sealed class ProfileExporterService(RequestValidator validator, ServiceLimits limits)
    : Wire.ProfileExporter.ProfileExporterBase
{
    /// <inheritdoc/>
    public override Task<Wire.GenerateResponse> Generate(Wire.GenerateRequest request, ServerCallContext context)
    {
        using WorkTime time = new(limits, context.CancellationToken);
        validator.Validate(request);
        PatternParameters page = request.Pattern.ToParameters();
        FittedPattern? fitted = request.WantsFit()
            ? PatternFitting.Run(page, request.ToFitSettings(), time.Token)
            : null;
        (DrawnPattern? drawn, PatternConflict? conflict) = PatternDrawing.Make(
            fitted is { IsReached: true } ? fitted.Parameters : page,
            time.Token
        );
        PatternRules.ThrowIf(conflict, fitted);
        DrawnPattern pattern = drawn!;

        Placement placement = PatternSource.Place(pattern);
        KnifeSource source = PatternSource.Of(pattern);
        BenchSettings settings = request.Bench.WithTargets(pattern.Targets).ToSettings();
        BenchReport bench = BenchCheck.Run(placement, settings, time.Token);
        Wire.CheckReport report = bench.ToWire(request.Name, source);
        HandleReport? handle = null;
        if (request.Handle is { } asked)
        {
            HandleSettings handleSettings = asked.WithDimensionsOf(pattern.Dimensions).ToSettings() with
            {
                WantedPullN = null,
            };
            (handle, var problems) = HandleCheck.Run(bench, handleSettings, time.Token);
            KnifeFrame.ThrowIfAny(problems, source);
            report.Add(handle!, placement.ToDrawing);
        }

        Wire.GenerateResponse response = new()
        {
            Pattern = pattern.ToWire(),
            Report = report,
            Fitting = fitted?.ToWire(request.Pattern),
        };
        PatternArtifacts artifacts = new(request, pattern, bench, handle, fitted);
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
    ) => Task.FromResult(new Wire.ListPatternParametersResponse { Parameters = { ParameterListMapping.All } });
}
