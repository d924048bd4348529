using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Patterns;
using Flushback.Patterns.Fitting;
using Flushback.Patterns.Pairs;
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
        DrawnPair? pair = request.HasTwoBlades() ? Pair(request, time.Token) : null;
        DrawnPattern pattern =
            pair?.First ?? Draw(fitted is { IsReached: true } ? fitted.Parameters : page, fitted, time.Token);

        Checked first = Check(request, request.Name, pattern, pair?.Clearance.Findings ?? [], time.Token);
        Checked? second = pair is null
            ? null
            : Check(request, $"{request.Name}, second blade", pair.Second, [], time.Token);
        Wire.GenerateResponse response = new()
        {
            Pattern = pattern.ToWire(),
            Report = first.Report,
            Fitting = fitted?.ToWire(request.Pattern),
            Second = second is { } other ? pair!.ToWire(other.Report) : null,
        };
        PatternArtifacts artifacts = new(request, pattern, first.Bench, first.Handle)
        {
            Fitted = fitted,
            Pair = pair,
            SecondBench = second?.Bench,
            SecondHandle = second?.Handle,
        };
        foreach (Wire.ArtifactKind kind in request.Artifacts)
        {
            time.Token.ThrowIfCancellationRequested();
            response.Artifacts.Add(artifacts.Make(kind, response, time.Token));
        }

        return Task.FromResult(response);
    }

    private static DrawnPattern Draw(PatternParameters page, FittedPattern? fitted, CancellationToken cancellation)
    {
        (DrawnPattern? drawn, PatternConflict? conflict) = PatternDrawing.Make(page, cancellation);
        PatternRules.ThrowIf(conflict, fitted);
        return drawn!;
    }

    private static DrawnPair Pair(Wire.GenerateRequest request, CancellationToken cancellation)
    {
        (DrawnPair? pair, PatternConflict? conflict) = PairDrawing.Make(request.ToPair(), cancellation);
        PatternRules.ThrowIf(conflict);
        return pair!;
    }

    /// <summary>One blade on the bench, and in its handle where that is asked for.</summary>
    private static Checked Check(
        Wire.GenerateRequest request,
        string name,
        DrawnPattern pattern,
        ImmutableArray<Finding> further,
        CancellationToken cancellation
    )
    {
        Placement placement = PatternSource.Place(pattern);
        KnifeSource source = PatternSource.Of(pattern);
        BenchSettings settings = request.Bench.WithTargets(pattern.Targets).ToSettings();
        BenchReport alone = BenchCheck.Run(placement, settings, cancellation);
        BenchReport bench = alone with
        {
            Findings = [.. alone.Findings.Concat(further).OrderByDescending(finding => finding.Severity)],
        };
        Wire.CheckReport report = bench.ToWire(name, source);
        if (request.Handle is not { } asked)
        {
            return new Checked(bench, null, report);
        }

        HandleSettings inHandle = asked.WithDimensionsOf(pattern.Dimensions).ToSettings() with { WantedPullN = null };
        (HandleReport? handle, var problems) = HandleCheck.Run(bench, inHandle, cancellation);
        KnifeFrame.ThrowIfAny(problems, source);
        report.Add(handle!, placement.ToDrawing);
        return new Checked(bench, handle, report);
    }

    /// <summary>What the check of one blade came to.</summary>
    private sealed record Checked(BenchReport Bench, HandleReport? Handle, Wire.CheckReport Report);

    /// <inheritdoc/>
    public override Task<Wire.ListPatternParametersResponse> ListPatternParameters(
        Wire.ListPatternParametersRequest request,
        ServerCallContext context
    ) => Task.FromResult(new Wire.ListPatternParametersResponse { Parameters = { ParameterListMapping.All } });
}
