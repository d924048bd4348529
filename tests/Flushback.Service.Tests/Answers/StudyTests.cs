using Flushback.Mechanism.Tolerances;
using Flushback.Service.Queueing;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf;
using Grpc.Core;
using Microsoft.Extensions.DependencyInjection;

namespace Flushback.Service.Tests.Answers;

public sealed class StudyTests(RunningService service) : IClassFixture<RunningService>
{
    [Fact]
    public async Task A_study_tells_how_far_it_is_then_the_report_then_the_files_in_the_order_asked()
    {
        Wire.ArtifactKind[] kinds =
        [
            Wire.ArtifactKind.SpreadCsv,
            Wire.ArtifactKind.Text,
            Wire.ArtifactKind.Html,
            Wire.ArtifactKind.Json,
        ];
        List<Wire.StudyResponse> all = await service.Study.AllAsync(StudyRequests.Of(500, kinds));

        int report = all.FindIndex(response => response.Report is not null);
        Wire.StudyProgress[] progress = [.. all.Take(report).Select(response => response.Progress)];
        Assert.All(progress, told => Assert.Equal(500, told.Parts));
        Assert.Equal(progress.Select(told => told.Solved).Order(), progress.Select(told => told.Solved));
        Assert.Equal(500, progress[^1].Solved);
        Assert.Equal(kinds, all.Skip(report + 1).Select(response => response.Artifact.Kind));
        string csv = all[report + 1].Artifact.Content.ToStringUtf8();
        Assert.Equal(501, csv.Split("\r\n", StringSplitOptions.RemoveEmptyEntries).Length);
    }

    [Fact]
    public async Task The_report_tells_counts_shares_spreads_and_slopes_of_the_knife()
    {
        Wire.StudyRequest request = StudyRequests.Of(400);
        request.Tolerances.Faces.Add(
            new Wire.FaceProfile
            {
                Face = new Wire.Site { BladeFace = Wire.BladeFace.Shoulder },
                ProfileMm = 0,
            }
        );
        Wire.StudyReport report = await ReportAsync(request);
        Wire.StopReading[] stops = [.. (await service.Checker.CheckAsync(Requests.Outlines())).Report.Stops];

        Assert.Equal("Wagtail", report.Name);
        Assert.Equal(400, report.Counts.Parts);
        Assert.InRange(report.WithinTargets.Share, report.WithinTargets.Low, report.WithinTargets.High);
        Wire.OutcomeSpread half = report.Outcomes.Single(o => o.Outcome == Wire.StudyOutcome.HalfStopLift);
        Assert.Equal(stops[1].LiftMm, half.AsDrawn, 1e-12);
        Assert.Equal(
            stops[1].RestAngleDeg,
            report.Outcomes.Single(o => o.Outcome == Wire.StudyOutcome.HalfStopAngle).AsDrawn,
            1e-9
        );
        Assert.True(half.ExactSlopes);
        Assert.InRange(half.Deviation / half.LinearDeviation, 0.8, 1.2);
        Assert.DoesNotContain(report.Tolerances, effect => effect.Face?.BladeFace == Wire.BladeFace.Shoulder);
        Assert.All(
            report.Tolerances.SelectMany(effect => effect.Dimensions),
            dimension => Assert.Equal(report.Outcomes.Count, dimension.PerMm.Count)
        );
        for (int i = 0; i < report.Outcomes.Count; i++)
        {
            Assert.Equal(1, report.Tolerances.Sum(effect => effect.VarianceShares[i]), 1e-9);
        }
    }

    [Fact]
    public async Task The_handle_adds_pull_and_stress_and_what_really_bent_parts_show()
    {
        Wire.StudyRequest request = StudyRequests.Of(120);
        request.Handle = new Wire.HandleSettings { WidthMm = 3.2 };
        request.Tolerances.PreloadMm = 0.05;
        Wire.StudyReport report = await ReportAsync(request);

        Assert.Equal(
            [Wire.StudyOutcome.Pull, Wire.StudyOutcome.PeakStress],
            report.Outcomes.TakeLast(2).Select(outcome => outcome.Outcome)
        );
        Assert.Equal(ToleranceStudy.PartsBent, report.Bent.Parts);
        Assert.Contains(report.Tolerances, effect => effect.Of == Wire.ToleranceOf.Preload);
        Assert.Contains(report.Tolerances, effect => effect.Of == Wire.ToleranceOf.RearPinPlace);
    }

    [Fact]
    public async Task The_same_study_has_the_same_bytes_with_one_core_and_with_several()
    {
        RunningService single = await RunningService.StartAsync("--Limits:Parallel=1");
        RunningService several = await RunningService.StartAsync("--Limits:Parallel=4");
        Wire.StudyRequest request = StudyRequests.Of(300, Wire.ArtifactKind.Html, Wire.ArtifactKind.SpreadCsv);

        byte[][] first = Told(await single.Study.AllAsync(request));
        byte[][] second = Told(await several.Study.AllAsync(request));

        Assert.Equal(first, second);
        await single.DisposeAsync();
        await several.DisposeAsync();
    }

    [Fact]
    public async Task A_check_has_its_turn_while_a_study_is_under_way()
    {
        RunningService single = await RunningService.StartAsync("--Limits:Parallel=1");
        using AsyncServerStreamingCall<Wire.StudyResponse> study = single.Study.Study(StudyRequests.Of(20_000));
        Assert.True(await study.ResponseStream.MoveNext(CancellationToken.None));

        Wire.CheckResponse response = await single.Checker.CheckAsync(Requests.Outlines());

        Assert.NotNull(response.Report);
        Assert.True(await study.ResponseStream.MoveNext(CancellationToken.None));
        Assert.InRange(study.ResponseStream.Current.Progress.Solved, 0, 19_999);
        study.Dispose();
        await single.DisposeAsync();
    }

    [Fact]
    public async Task A_study_that_is_hung_up_on_frees_its_turns()
    {
        RunningService single = await RunningService.StartAsync("--Limits:Parallel=1");
        WorkGate gate = single.Parts.GetRequiredService<WorkGate>();
        using (AsyncServerStreamingCall<Wire.StudyResponse> study = single.Study.Study(StudyRequests.Of(20_000)))
        {
            Assert.True(await study.ResponseStream.MoveNext(CancellationToken.None));
        }

        await Eventually.IsTrueAsync(() => gate.Running + gate.Waiting == 0);
        await single.DisposeAsync();
    }

    private static byte[][] Told(IEnumerable<Wire.StudyResponse> all) =>
        [.. all.Where(response => response.Progress is null).Select(response => response.ToByteArray())];

    private async Task<Wire.StudyReport> ReportAsync(Wire.StudyRequest request) =>
        (await service.Study.AllAsync(request)).Single(response => response.Report is not null).Report;
}
