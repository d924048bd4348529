using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Patterns;
using Flushback.Patterns.Fitting;
using Flushback.Patterns.Parameters;
using Flushback.Service.Drawings;
using Flushback.Service.Limits;
using Flushback.Service.Mapping;
using Flushback.Service.Validation;

namespace Flushback.Service.Checks;

/// <summary>A pattern from its page of dimensions to the report, the same for a single call and for an item of a stream.</summary>
public sealed class PatternChecker(RequestValidator validator, ServiceLimits limits)
{
    /// <summary>Validates, fits where asked, draws, reads the dial and maps.</summary>
    /// <param name="request">What the caller asks; its files are not made here.</param>
    /// <param name="cancellation">Stops the work.</param>
    /// <exception cref="Grpc.Core.RpcException">INVALID_ARGUMENT for numbers outside their limits or in conflict.</exception>
    internal CheckedPattern Check(Wire.GenerateRequest request, CancellationToken cancellation)
    {
        validator.Validate(request);
        PatternParameters page = request.Pattern.ToParameters();
        FittedPattern? fitted = request.WantsFit()
            ? PatternFitting.Run(page, request.ToFitSettings(), cancellation)
            : null;
        (DrawnPattern? drawn, PatternConflict? conflict) = PatternDrawing.Make(
            fitted is { IsReached: true } ? fitted.Parameters : page,
            cancellation
        );
        PatternRules.ThrowIf(conflict, fitted);
        DrawnPattern pattern = drawn!;

        Placement placement = PatternSource.Place(pattern);
        KnifeSource source = PatternSource.Of(pattern);
        BenchSettings settings = request.Bench.WithTargets(pattern.Targets).ToSettings();
        BenchReport bench = BenchCheck.Run(placement, settings, cancellation);
        Wire.CheckReport report = bench.ToWire(request.Name, source);
        HandleReport? handle = null;
        if (request.Handle is { } asked)
        {
            HandleSettings handleSettings = asked.WithDimensionsOf(pattern.Dimensions).ToSettings() with
            {
                WantedPullN = null,
            };
            (handle, var problems) = HandleCheck.Run(bench, handleSettings, cancellation);
            KnifeFrame.ThrowIfAny(problems, source);
            report.Add(handle!, placement.ToDrawing);
        }

        return new CheckedPattern(pattern, source, bench, handle, report, fitted);
    }

    /// <summary>Checks a pattern as an item of a library.</summary>
    /// <param name="request">What the caller asks.</param>
    /// <param name="caller">Cancelled when he hangs up or his deadline passes.</param>
    /// <inheritdoc cref="Check(Wire.GenerateRequest, CancellationToken)" path="/exception"/>
    public Wire.CheckResponse Check(Wire.PatternCheckRequest request, CancellationToken caller)
    {
        using WorkTime time = new(limits, caller);
        CheckedPattern made = Check(
            new Wire.GenerateRequest
            {
                Name = request.Name,
                Pattern = request.Pattern,
                Bench = request.Bench,
                Handle = request.Handle,
            },
            time.Token
        );
        return new Wire.CheckResponse
        {
            Report = made.Report,
            Outlines = request.WithOutlines ? made.Source.Drawn.ToWire() : null,
        };
    }
}

/// <summary>A pattern that was drawn and checked.</summary>
/// <param name="Drawn">The outlines and the dimensions they follow from.</param>
/// <param name="Source">The knife as a drawn one.</param>
/// <param name="Bench">What the bench shows.</param>
/// <param name="Handle">The knife in its handle, when asked for.</param>
/// <param name="Report">Both in the contract's form.</param>
/// <param name="Fitted">What a fit of the page came to, when asked for.</param>
internal sealed record CheckedPattern(
    DrawnPattern Drawn,
    KnifeSource Source,
    BenchReport Bench,
    HandleReport? Handle,
    Wire.CheckReport Report,
    FittedPattern? Fitted
);
