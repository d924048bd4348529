using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Tolerances;
using Flushback.Mechanism.Tolerances.Chance;

namespace Flushback.Service.Mapping;

/// <summary>A tolerance study from and to the contract. The enums carry the same words on both sides.</summary>
internal static class StudyMapping
{
    /// <summary>From the contract; validated.</summary>
    public static ToleranceSettings ToSettings(this Wire.StudyRequest request)
    {
        ToleranceSettings defaults = new();
        Wire.Tolerances tolerances = request.Tolerances;
        return new ToleranceSettings
        {
            PinsMm = tolerances.PinsMm,
            ClearanceMm = tolerances.ClearanceMm,
            ProfileMm = tolerances.ProfileMm,
            FaceProfilesMm = tolerances.Faces.ToImmutableDictionary(
                profile => profile.Face.ToSite(),
                profile => profile.ProfileMm
            ),
            DepthMm = tolerances.DepthMm,
            WidthMm = tolerances.WidthMm,
            PreloadMm = tolerances.PreloadMm,
            Distribution = request.Spread == Wire.SpreadKind.Normal ? Distribution.Normal : Distribution.Uniform,
            Parts = request.HasParts ? request.Parts : defaults.Parts,
            Seed = request.HasSeed ? request.Seed : defaults.Seed,
            Bench = request.Bench.ToSettings(),
            Handle = request.Handle?.ToSettings(),
        };
    }

    /// <summary>To the contract.</summary>
    public static Wire.StudyReport ToWire(this ToleranceReport report, string name)
    {
        Wire.StudyReport wire = new()
        {
            Name = name,
            Spread =
                report.Settings.Distribution == Distribution.Normal ? Wire.SpreadKind.Normal : Wire.SpreadKind.Uniform,
            Seed = report.Settings.Seed,
            Counts = new Wire.PartCounts
            {
                Parts = report.Counts.All,
                NotAssembled = report.Counts.NotAssembled,
                NoRestOpen = report.Counts.NoRestOpen,
                NoRestHalfStop = report.Counts.NoRestHalfStop,
                NoRestClosed = report.Counts.NoRestClosed,
            },
            WithinTargets = ToWire(report.Within),
        };
        wire.Outcomes.AddRange(report.Spreads.Zip(report.Derivatives, ToWire));
        wire.Tolerances.AddRange(report.Tightenings.Select(tightening => ToWire(report, tightening)));
        if (report.Bent is { } bent)
        {
            wire.Bent = new Wire.BentParts
            {
                Parts = bent.Count,
                Stuck = bent.Stuck,
                PullDifferenceN = bent.PullDifferenceN,
                StressDifferenceMpa = bent.StressDifferenceMpa,
            };
        }

        return wire;
    }

    private static Wire.OutcomeSpread ToWire(Spread spread, Derivatives derivatives)
    {
        Wire.OutcomeSpread wire = new()
        {
            Outcome = Enum.Parse<Wire.StudyOutcome>(spread.Of.ToString()),
            AsDrawn = ToUnit(spread.Of, spread.AsDrawn),
            Parts = spread.Count,
            LinearDeviation = ToUnit(spread.Of, spread.LinearDeviation),
            ExactSlopes = derivatives.IsExact,
        };
        if (spread.Count > 0)
        {
            wire.Mean = ToUnit(spread.Of, spread.Mean);
            wire.Percentile25 = ToUnit(spread.Of, spread.Percentiles[0]);
            wire.Median = ToUnit(spread.Of, spread.Percentiles[1]);
            wire.Percentile975 = ToUnit(spread.Of, spread.Percentiles[2]);
        }

        if (spread.Count > 1)
        {
            wire.Deviation = ToUnit(spread.Of, spread.Deviation);
        }

        if (spread.Within is { } within)
        {
            wire.Within = ToWire(within);
        }

        return wire;
    }

    private static Wire.ToleranceEffect ToWire(ToleranceReport report, Tightening tightening)
    {
        Tolerance tolerance = report.List.Tolerances[tightening.Tolerance];
        Wire.ToleranceEffect wire = new()
        {
            Of = Enum.Parse<Wire.ToleranceOf>(tolerance.Kind.ToString()),
            LimitMm = tolerance.Mm,
            WithinIfHalved = ToWire(tightening.WithinIfHalved),
        };
        if (tolerance.Face is { } face)
        {
            wire.Face = ToWire(face);
        }

        wire.VarianceShares.AddRange(tightening.VarianceShares);
        for (int i = 0; i < report.List.Dimensions.Length; i++)
        {
            Dimension dimension = report.List.Dimensions[i];
            if (dimension.Tolerance == tightening.Tolerance)
            {
                Wire.DimensionSlopes slopes = new()
                {
                    Deviation = Enum.Parse<Wire.DeviationKind>(dimension.Deviation.ToString()),
                };
                slopes.PerMm.AddRange(report.Derivatives.Select(d => ToUnit(d.Of, d.PerMm[i])));
                wire.Dimensions.Add(slopes);
            }
        }

        return wire;
    }

    private static Wire.Site ToWire(Site site) =>
        site.Spring is { } spring
            ? new Wire.Site { SpringFace = spring.ToWire() }
            : new Wire.Site { BladeFace = site.Blade!.Value.ToWire() };

    private static Wire.CountedShare ToWire(CountedShare share) =>
        new()
        {
            Share = share.Share,
            Low = share.Low,
            High = share.High,
        };

    private static double ToUnit(Outcome outcome, double value) => outcome.IsAngle() ? new Angle(value).Degrees : value;
}
