using System.Collections.Immutable;
using Flushback.Catalogue.Designs;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Tolerances;

namespace Flushback.Tolerances.Tests;

/// <summary>A study as a whole.</summary>
public class StudyTests
{
    private static readonly ToleranceSettings _short = Studied.Everything with { Parts = 300 };

    [Fact]
    public void A_part_without_deviations_reads_what_the_bench_reads()
    {
        foreach (KnifeDesign design in KnifeCatalogue.All)
        {
            ToleranceStudy study = Studied.Begin(design, Studied.Everything);
            StopReadings bench = StopCheck.Run(design.ToKnife(), new BenchSettings()).Readings;

            Assert.Equal(bench.HasHalfStop, study.AsDrawn.HalfStop is not null);
            Assert.Equal(0, study.AsDrawn.Open.LiftMm);
            Assert.Equal(bench.At(Stop.Open)!.RestAngle, study.AsDrawn.Open.RestAngle);
            Assert.Equal(bench.At(Stop.HalfStop)?.LiftMm, study.AsDrawn.HalfStop?.LiftMm);
            Assert.Equal(bench.At(Stop.Closed)!.LiftMm, study.AsDrawn.Closed.LiftMm);
            Assert.Equal(study.AsDrawn, study.ReadPart(new double[study.List.Dimensions.Length]));
        }
    }

    [Fact]
    public void Parts_are_the_same_in_whatever_order_and_by_however_many_threads_they_are_read()
    {
        ToleranceReport parallel = Studied.Run(KnifeCatalogue.Sandpiper, _short);
        ToleranceStudy backwards = Studied.Begin(KnifeCatalogue.Sandpiper, _short);
        for (int slice = backwards.Slices - 1; slice >= 0; slice--)
        {
            backwards.ReadSlice(slice);
        }

        ToleranceReport other = backwards.Report();
        Assert.Equal(parallel.Parts.AsEnumerable(), other.Parts.AsEnumerable());
        Assert.Equal(parallel.Within, other.Within);
        Assert.Equal(parallel.Spreads.Select(spread => spread.Mean), other.Spreads.Select(spread => spread.Mean));
    }

    [Fact]
    public void More_parts_begin_with_the_same_parts_and_another_seed_draws_others()
    {
        ToleranceReport few = Studied.Run(KnifeCatalogue.Wagtail, _short with { Parts = 50 });
        ToleranceReport more = Studied.Run(KnifeCatalogue.Wagtail, _short with { Parts = 90 });
        ToleranceReport others = Studied.Run(KnifeCatalogue.Wagtail, _short with { Parts = 50, Seed = 2 });

        Assert.Equal(few.Parts.AsEnumerable(), more.Parts.Take(50));
        Assert.Empty(few.Parts.Intersect(others.Parts));
    }

    [Fact]
    public void Each_part_reads_on_the_bench_what_the_study_says_it_reads()
    {
        ToleranceStudy study = Studied.Begin(KnifeCatalogue.Sandpiper, _short);
        Random random = new(5);
        for (int i = 0; i < 20; i++)
        {
            double[] deviations =
            [
                .. study.List.Dimensions.Select(d => study.List.Of(d).Mm * 0.5 * random.NextDouble()),
            ];
            StopReadings bench = StopCheck.Run(study.DrawPart(deviations)!, new BenchSettings()).Readings;
            PartReading part = study.ReadPart(deviations);

            Assert.Equal(bench.At(Stop.HalfStop)!.LiftMm, part.HalfStop!.Value.LiftMm);
            Assert.Equal(bench.At(Stop.Closed)!.LiftMm, part.Closed.LiftMm);
            Assert.Equal(bench.At(Stop.Open)!.RestAngle, part.Open.RestAngle);
        }
    }

    [Fact]
    public void Parts_that_do_not_go_together_or_do_not_rest_are_counted_and_none_of_them_is_within_targets()
    {
        // Faces off by up to 3 mm make knives no more.
        ToleranceReport report = Studied.Run(
            KnifeCatalogue.Wagtail,
            new ToleranceSettings { ProfileMm = 3, Parts = 400 }
        );
        PartCounts counts = report.Counts;
        int lost = report.Parts.Count(part => !part.Rests);

        Assert.Equal(400, counts.All);
        Assert.InRange(counts.NotAssembled, 1, 399);
        Assert.InRange(counts.NoRestHalfStop, 1, 399);
        Assert.True(lost <= counts.NotAssembled + counts.NoRestOpen + counts.NoRestHalfStop + counts.NoRestClosed);
        Assert.True(report.Within.Share <= (double)(400 - lost) / 400);
        Assert.Equal(400 - counts.NotAssembled - counts.NoRestOpen, report.SpreadOf(Outcome.OpenHeight)!.Count);
    }

    [Fact]
    public void The_share_within_targets_is_that_of_the_parts_whose_readings_all_lie_in_their_windows()
    {
        ToleranceReport report = Studied.Run(KnifeCatalogue.Wagtail, _short);
        StopTargets targets = report.Settings.Bench.Targets;
        int within = report.Parts.Count(part =>
            part.Rests
            && Math.Abs(part.HalfStop!.Value.LiftMm - targets.HalfStop.LiftMm) <= targets.HalfStop.ToleranceMm
            && Math.Abs(part.Closed.LiftMm - targets.Closed.LiftMm) <= targets.Closed.ToleranceMm
        );

        Assert.InRange(within, 1, 299);
        Assert.Equal(within / 300.0, report.Within.Share);
        Assert.True(report.Within.Share <= report.SpreadOf(Outcome.HalfStopLift)!.Within!.Value.Share);
        Assert.True(report.Within.Share <= report.SpreadOf(Outcome.ClosedLift)!.Within!.Value.Share);
    }

    [Fact]
    public void Halving_the_first_tolerance_on_the_list_brings_what_the_list_says()
    {
        ToleranceSettings settings = new() { ProfileMm = 0.03, Parts = 2_000 };
        ToleranceReport report = Studied.Run(KnifeCatalogue.Wagtail, settings);
        Tightening first = report.Tightenings[0];
        Tolerance tolerance = report.List.Tolerances[first.Tolerance];
        ToleranceReport halved = Studied.Run(
            KnifeCatalogue.Wagtail,
            settings with
            {
                FaceProfilesMm = ImmutableDictionary<Site, double>.Empty.Add(tolerance.Face!.Value, tolerance.Mm / 2),
            }
        );

        Assert.True(first.WithinIfHalved.Share > report.Within.Share);
        Assert.Equal(halved.Within.Share, first.WithinIfHalved.Share, 0.01);
        Assert.All(report.Tightenings, other => Assert.True(other.WithinIfHalved.Share <= first.WithinIfHalved.Share));
    }

    [Fact]
    public void The_shares_of_the_variance_come_to_one()
    {
        ToleranceReport report = Studied.Run(KnifeCatalogue.Redshank, _short);
        for (int i = 0; i < report.Derivatives.Length; i++)
        {
            Assert.Equal(1, report.Tightenings.Sum(tightening => tightening.VarianceShares[i]), 1e-9);
        }
    }

    [Fact]
    public void Where_nothing_varies_one_sentence_says_so()
    {
        (ToleranceReport? report, ImmutableArray<KnifeProblem> problems) = ToleranceStudy.Run(
            Studied.Placed(KnifeCatalogue.Wagtail),
            new ToleranceSettings()
        );

        Assert.Null(report);
        Assert.Equal("NOTHING_VARIES", Assert.Single(problems).Reason);
    }

    [Fact]
    public void A_cancelled_study_ends() =>
        Assert.ThrowsAny<OperationCanceledException>(() =>
            ToleranceStudy.Run(
                Studied.Placed(KnifeCatalogue.Wagtail),
                Studied.Everything,
                new CancellationToken(canceled: true)
            )
        );
}
