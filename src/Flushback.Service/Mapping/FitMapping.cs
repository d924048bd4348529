using System.Collections.Immutable;
using Flushback.Patterns;
using Flushback.Patterns.Fitting;
using Flushback.Patterns.Parameters;

namespace Flushback.Service.Mapping;

/// <summary>A fit of a pattern between the contract and the core.</summary>
internal static class FitMapping
{
    private static readonly ImmutableArray<string> _depths =
    [
        "spring.nose_depth_mm",
        "spring.centre_depth_mm",
        "spring.rear_depth_mm",
    ];

    /// <summary>True when a fit is asked for.</summary>
    public static bool WantsFit(this Wire.GenerateRequest request) =>
        request.Handle is { HasWantedPullN: true } || request.Fit is { NoFindings: true };

    /// <summary>What the fit is after and what it may change; the request wants one.</summary>
    public static FitSettings ToFitSettings(this Wire.GenerateRequest request) =>
        new()
        {
            Free = FreeIn(request),
            WantsNoFindings = request.Fit is { NoFindings: true },
            WantedPullN = request.Handle is { HasWantedPullN: true } pulled ? pulled.WantedPullN : null,
            MostStressMpa = request.Handle is { HasMostStressMpa: true } stressed ? stressed.MostStressMpa : null,
            Bench = dimensions => request.Bench.WithTargets(DrawnPattern.TargetsOf(dimensions)).ToSettings(),
            Handle = request.Handle is { } asked ? dimensions => asked.WithDimensionsOf(dimensions).ToSettings() : null,
        };

    /// <summary>To the contract.</summary>
    /// <param name="fitted">What came of the fit.</param>
    /// <param name="page">The page it was made of.</param>
    public static Wire.Fitting ToWire(this FittedPattern fitted, Wire.Pattern? page)
    {
        Wire.Fitting wire = new()
        {
            Reached = fitted.IsReached,
            Sentence = fitted.Sentence,
            ChangePercent = fitted.ChangePercent,
            Pattern = page.With(fitted.Parameters),
        };
        wire.Changes.AddRange(
            fitted.Changes.Select(change => new Wire.FittedParameter
            {
                Field = change.Limit.Path,
                Name = change.Limit.Name,
                Unit = change.Limit.Unit,
                From = change.From,
                To = change.To,
                Chosen = change.IsFree,
            })
        );
        wire.InTheWay.AddRange(fitted.InTheWay);
        if (fitted.PullN is { } pull)
        {
            wire.PullN = pull;
        }

        if (fitted.PeakStressMpa is { } stress)
        {
            wire.PeakStressMpa = stress;
        }

        return wire;
    }

    private static ImmutableArray<string> FreeIn(Wire.GenerateRequest request)
    {
        if (request.Fit is { Free.Count: > 0 } named)
        {
            return [.. named.Free];
        }

        ImmutableArray<string> spring = request.Handle is { HasWantedPullN: true } handle ? Varied(handle.Varied) : [];
        return request.Fit is { NoFindings: true } ? [.. LeftOut(request.Pattern), .. spring] : spring;
    }

    private static ImmutableArray<string> Varied(Wire.Dimension dimension) =>
        dimension switch
        {
            Wire.Dimension.Preload => ["spring.preload_mm"],
            Wire.Dimension.SpringDepth => _depths,
            Wire.Dimension.SpringWidth => ["spring.width_mm"],
            Wire.Dimension.CentrePinForward => ["pins.centre_behind_mm"],
            _ => FitSettings.SpringPaths,
        };

    private static IEnumerable<string> LeftOut(Wire.Pattern? pattern) =>
        PatternLimits
            .All.Where(limit => FitSettings.IsFreeUnnamed(limit) && !PatternMapping.IsGiven(pattern, limit))
            .Select(limit => limit.Path);
}
