using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf;

namespace Flushback.Service.Tests.Answers;

public sealed class PlanTests(RunningService service) : IClassFixture<RunningService>
{
    private const double ThouMm = 0.0254;

    // What a plan settles to.
    private const double SettledMm = 5e-6;

    [Fact]
    public async Task A_knife_that_reads_high_lands_on_its_targets()
    {
        Wire.PlanReport report = await PlanAsync(PlanRequests.High());

        Assert.Equal("Wagtail", report.Name);
        Assert.True(report.ReachesTargets);
        Assert.Empty(report.Obstacles);
        Assert.Equal(5 * ThouMm, report.Steps[^1].Stops[1].LiftMm, SettledMm);
        Assert.Equal(15 * ThouMm, report.Steps[^1].Stops[2].LiftMm, SettledMm);
        Assert.Equal(report.Steps.Sum(step => step.Removed.AreaMm2), report.RemovedMm2, 1e-9);
        Assert.Equal(report.Steps[^1].Blade, report.Blade);
        Assert.Equal(report.Start.Spring, report.Spring);
        Assert.All(report.Optimum.Faces, face => Assert.True(face.ReadingMultiplierMm2PerMm > 0));
    }

    [Fact]
    public async Task The_start_reads_as_a_check_of_the_drawing_does()
    {
        Wire.CheckRequest check = Requests.Outlines(PlanRequests.ReadsHigh.ToDrawn());
        Wire.PlanReport report = await PlanAsync(PlanRequests.Of(check));
        Wire.CheckReport checkedReport = (await service.Checker.CheckAsync(check)).Report;

        Assert.Equal(checkedReport.Stops, report.Start.Stops);
        Assert.Equal(checkedReport.Findings, report.Start.Findings);
        Assert.Equal(checkedReport.Reading, report.Reading);
    }

    [Fact]
    public async Task Simulating_the_passes_gives_the_reading_expected_after_each()
    {
        Wire.PlanRequest request = PlanRequests.High();
        Wire.PlanReport plan = await PlanAsync(request);
        Wire.SimulateRequest passes = new() { Knife = request.Knife };
        passes.Passes.AddRange(plan.Steps.Select(step => step.Pass));
        Wire.SimulateReport simulated = (await service.Simulator.SimulateAsync(passes)).Report;

        Assert.Equal(plan.Steps, simulated.Steps);
    }

    [Fact]
    public async Task A_knife_that_reads_as_wanted_needs_no_slice()
    {
        Wire.PlanRequest request = PlanRequests.Of(Requests.Outlines());
        request.Plan = new Wire.PlanSettings { LeastCornerRadiusMm = 0 };
        Wire.PlanReport report = await PlanAsync(request);

        Assert.True(report.ReachesTargets);
        Assert.Empty(report.Steps);
        Assert.Null(report.Optimum);
        Assert.Equal(report.Start.Blade, report.Blade);
        Assert.Equal(0, report.RemovedMm2);
    }

    [Fact]
    public async Task A_stop_that_cannot_be_raised_is_told_with_the_nearest_reading_and_what_would_do_it()
    {
        Wire.PlanReport report = await PlanAsync(PlanRequests.Of(Requests.Outlines(PlanRequests.ReadsLow.ToDrawn())));

        Assert.False(report.ReachesTargets);
        Assert.Null(report.Optimum);
        Wire.PlanObstacle obstacle = Assert.Single(report.Obstacles);
        Assert.Equal((Wire.PlanConstraint.ReadsLow, Wire.Stop.Closed), (obstacle.Constraint, obstacle.Stop));
        Assert.Equal(15 * ThouMm, obstacle.WantedMm, 1e-12);
        Assert.Equal(report.Steps[^1].Stops[2].LiftMm, obstacle.NearestMm);
        Assert.Equal(obstacle.WantedMm - obstacle.NearestMm, obstacle.ShortMm, 1e-12);
        Assert.NotEmpty(obstacle.Remedies);
        Assert.All(
            [obstacle.Message, .. obstacle.Remedies],
            sentence => Assert.EndsWith(".", sentence, StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task A_plan_starts_from_what_was_measured_and_says_which_offsets_explain_it()
    {
        Wire.PlanRequest request = PlanRequests.High();
        request.Measured = new Wire.MeasuredReadings { HalfStopMm = 0.2, ClosedMm = 0.6 };
        Wire.PlanReport report = await PlanAsync(request);

        Assert.Equal(0.2, report.Start.Stops[1].LiftMm, SettledMm);
        Assert.Equal(0.6, report.Start.Stops[2].LiftMm, SettledMm);
        Assert.Equal(
            [Wire.BladeFace.OpenFlat, Wire.BladeFace.HalfStopFace, Wire.BladeFace.ClosedFace],
            report.Offsets.Select(offset => offset.Face)
        );
        Assert.True(report.Offsets[1].FrontMm < 0 && report.Offsets[2].FrontMm > 0);
        Assert.All(report.Offsets, offset => Assert.InRange(Math.Abs(offset.FrontMm), 0, 0.1));
        Assert.Equal(0.25, report.DrawnStops[1].LiftMm, 0.01);
        Assert.Equal(15 * ThouMm, report.Steps[^1].Stops[2].LiftMm, SettledMm);
    }

    [Fact]
    public async Task Stock_is_kept_above_the_targets_and_counts_as_wanted()
    {
        Wire.PlanRequest request = PlanRequests.High();
        request.Plan = new Wire.PlanSettings { StockKeptMm = 0.1 };
        Wire.PlanReport report = await PlanAsync(request);

        Wire.StopReading closed = report.Steps[^1].Stops[2];
        Assert.Equal((15 * ThouMm) + 0.1, closed.LiftMm, SettledMm);
        Assert.Equal((15 * ThouMm) + 0.1, closed.TargetMm, 1e-12);
        Assert.Equal(Wire.Verdict.Good, closed.Verdict);
    }

    [Fact]
    public async Task A_finished_pair_lands_flush_but_where_another_target_is_named()
    {
        Wire.PlanRequest request = PlanRequests.Of(Requests.Outlines());
        request.Bench = new Wire.BenchSettings { TargetSet = Wire.TargetSet.Finished };
        request.Bench.Closed = new Wire.StopTarget { LiftMm = 0.2 };
        Wire.PlanReport report = await PlanAsync(request);

        Assert.Equal(0, report.Steps[^1].Stops[1].LiftMm, SettledMm);
        Assert.Equal(0.2, report.Steps[^1].Stops[2].LiftMm, SettledMm);
    }

    [Fact]
    public async Task The_settings_reach_the_plan()
    {
        Wire.PlanRequest request = PlanRequests.High();
        request.Plan = new Wire.PlanSettings
        {
            RestWindowDeg = 0.2,
            LeastCornerRadiusMm = 0.4,
            Relief = new Wire.ReliefWanted { DepthMm = 0.06, MarginMm = 0.7 },
        };
        Wire.PlanReport report = await PlanAsync(request);

        Assert.InRange(Math.Abs(report.Steps[^1].Stops[1].RestAngleDeg - 90), 0, 0.2 + 1e-4);
        Assert.InRange(Math.Abs(report.Steps[^1].Stops[2].RestAngleDeg - 180), 0, 0.2 + 1e-4);
        Wire.Pass[] passes = [.. report.Steps.Select(step => step.Pass)];
        Assert.All(
            passes.Where(pass => pass.RoundCorner is not null),
            pass =>
                Assert.InRange(
                    pass.RoundCorner.RadiusMm,
                    0.4,
                    pass.RoundCorner.Corner.BladeFace == Wire.BladeFace.Kick ? 2 : 0.4
                )
        );
        Wire.ReliefArc[] reliefs = [.. passes.Where(pass => pass.ReliefArc is not null).Select(pass => pass.ReliefArc)];
        Assert.Equal(2, reliefs.Length);
        Assert.All(
            reliefs,
            relief => Assert.Equal((0.06, 0.7, 0.7), (relief.DepthMm, relief.FrontMarginMm, relief.RearMarginMm))
        );
    }

    [Fact]
    public async Task The_tip_comes_to_lie_where_it_is_wanted()
    {
        Wire.PlanRequest request = PlanRequests.High();
        double drawn = await TipDepthAsync(request.Knife);
        request.Plan = new Wire.PlanSettings
        {
            RestWindowDeg = 3,
            TipDepth = new Wire.LengthWindow { LeastMm = drawn + 0.3, MostMm = drawn + 0.6 },
        };
        Wire.PlanReport report = await PlanAsync(request);

        Assert.True(report.ReachesTargets);
        request.Knife.Outlines.Blade = report.Blade;
        Assert.InRange(await TipDepthAsync(request.Knife), drawn + 0.3 - 1e-3, drawn + 0.6 + 1e-3);
    }

    [Fact]
    public async Task Every_file_is_made_once_and_the_same_request_gets_the_same_bytes()
    {
        Wire.PlanRequest request = PlanRequests.High(
            Wire.ArtifactKind.Text,
            Wire.ArtifactKind.Html,
            Wire.ArtifactKind.Json,
            Wire.ArtifactKind.CorrectedDxf,
            Wire.ArtifactKind.CardHtml,
            Wire.ArtifactKind.CardPdf
        );

        Wire.PlanResponse first = await service.Simulator.PlanAsync(request);
        Wire.PlanResponse second = await service.Simulator.PlanAsync(request);

        Assert.Equal(
            [
                ("plan.txt", "text/plain"),
                ("plan.html", "text/html"),
                ("plan.json", "application/json"),
                ("corrected.dxf", "image/vnd.dxf"),
                ("card.html", "text/html"),
                ("card.pdf", "application/pdf"),
            ],
            first.Artifacts.Select(artifact => (artifact.FileName, artifact.MediaType))
        );
        Assert.Equal(first.ToByteArray(), second.ToByteArray());
        Assert.Equal(first.Report, Wire.PlanReport.Parser.ParseJson(first.Artifacts[2].Content.ToStringUtf8()));
        Assert.Equal("%PDF-"u8.ToArray(), first.Artifacts[5].Content.ToByteArray()[..5]);
    }

    [Fact]
    public async Task Names_of_layers_are_told_only_with_the_drawing_they_are_on() =>
        Assert.Null((await PlanAsync(PlanRequests.High(Wire.ArtifactKind.Text))).Layers);

    private async Task<double> TipDepthAsync(Wire.Knife knife) =>
        (await service.Checker.CheckAsync(new Wire.CheckRequest { Knife = knife })).Report.Clearances.TipDepthMm;

    private async Task<Wire.PlanReport> PlanAsync(Wire.PlanRequest request) =>
        (await service.Simulator.PlanAsync(request)).Report;
}
