using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Patterns;
using Flushback.Patterns.Fitting;
using Flushback.Patterns.Pairs;
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
        if (request.HasTwoBlades())
        {
            DrawnPair pair = DrawPair(request, cancellation);
            return new CheckedPattern(
                Check(request, request.Name, pair.First, pair.Clearance.Findings, cancellation),
                Check(request, SecondName(request.Name), pair.Second, [], cancellation),
                fitted,
                pair
            );
        }

        DrawnPattern drawn = Draw(fitted is { IsReached: true } ? fitted.Parameters : page, fitted, cancellation);
        return new CheckedPattern(Check(request, request.Name, drawn, [], cancellation), null, fitted, null);
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
                Arrangement = request.Arrangement,
                SecondBlade = request.SecondBlade,
            },
            time.Token
        );
        return new Wire.CheckResponse
        {
            Report = made.First.Report,
            Outlines = Outlines(made.First),
            Second = made.Second is { } second ? made.Pair!.ToChecked(second.Report, Outlines(second)) : null,
        };

        Wire.KnifeOutlines? Outlines(CheckedBlade blade) => request.WithOutlines ? blade.Source.Drawn.ToWire() : null;
    }

    private static string SecondName(string name) => name.Length > 0 ? $"{name}, second blade" : "second blade";

    private static DrawnPattern Draw(PatternParameters page, FittedPattern? fitted, CancellationToken cancellation)
    {
        (DrawnPattern? drawn, PatternConflict? conflict) = PatternDrawing.Make(page, cancellation);
        PatternRules.ThrowIf(conflict, fitted);
        return drawn!;
    }

    private static DrawnPair DrawPair(Wire.GenerateRequest request, CancellationToken cancellation)
    {
        (DrawnPair? pair, PatternConflict? conflict) = PairDrawing.Make(request.ToPair(), cancellation);
        PatternRules.ThrowIf(conflict);
        return pair!;
    }

    private static CheckedBlade Check(
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
        HandleReport? handle = null;
        if (request.Handle is { } asked)
        {
            HandleSettings inHandle = asked.WithDimensionsOf(pattern.Dimensions).ToSettings() with
            {
                WantedPullN = null,
            };
            (handle, var problems) = HandleCheck.Run(bench, inHandle, cancellation);
            KnifeFrame.ThrowIfAny(problems, source);
            report.Add(handle!, placement.ToDrawing);
        }

        return new CheckedBlade(pattern, source, bench, handle, report);
    }
}

/// <summary>A pattern that was drawn and checked.</summary>
/// <param name="First">The blade, or the first of two.</param>
/// <param name="Second">The second blade, where there is one.</param>
/// <param name="Fitted">What a fit of the page came to, when asked for.</param>
/// <param name="Pair">Both blades in one handle, where there are two.</param>
internal sealed record CheckedPattern(CheckedBlade First, CheckedBlade? Second, FittedPattern? Fitted, DrawnPair? Pair);

/// <summary>One blade on its spring, drawn and checked.</summary>
/// <param name="Drawn">The outlines and the dimensions they follow from.</param>
/// <param name="Source">The knife as a drawn one.</param>
/// <param name="Bench">What the bench shows.</param>
/// <param name="Handle">The knife in its handle, when asked for.</param>
/// <param name="Report">Both in the contract's form.</param>
internal sealed record CheckedBlade(
    DrawnPattern Drawn,
    KnifeSource Source,
    BenchReport Bench,
    HandleReport? Handle,
    Wire.CheckReport Report
);
