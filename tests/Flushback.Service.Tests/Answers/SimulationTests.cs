using Flushback.Catalogue.Designs;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf;

namespace Flushback.Service.Tests.Answers;

public sealed class SimulationTests(RunningService service) : IClassFixture<RunningService>
{
    private static readonly RigidMotion _turnedOver = new(Angle.FromDegrees(-25), new Vector(310, -44), Mirrored: true);

    [Fact]
    public async Task The_start_reads_as_a_check_of_the_drawing_does()
    {
        Wire.CheckRequest check = Requests.Outlines();
        Wire.SimulateReport report = await SimulateAsync(
            PassRequests.On(check, PassRequests.Round(Wire.BladeFace.OpenCorner, 0.5))
        );
        Wire.CheckReport checkedReport = (await service.Checker.CheckAsync(check)).Report;

        Assert.Equal("Wagtail", report.Name);
        Assert.Equal(checkedReport.Stops, report.Start.Stops);
        Assert.Equal(checkedReport.Findings, report.Start.Findings);
        Assert.Equal(checkedReport.Stops.Select(stop => stop.LiftMm), report.Start.RawLiftMm);
        Assert.Null(report.Start.Removed);
    }

    [Fact]
    public async Task A_pass_of_each_kind_answers_with_readings_outlines_and_what_it_took()
    {
        Wire.Pass[] passes = PassRequests.OfEachKind();
        Wire.SimulateReport report = await SimulateAsync(PassRequests.Of(passes));

        Assert.Equal(passes, report.Steps.Select(step => step.Pass));
        Wire.SimulationStep before = report.Start;
        foreach (Wire.SimulationStep step in report.Steps)
        {
            Assert.Equal(3, step.Stops.Count);
            Assert.Equal(0, step.Stops[0].LiftMm);
            Assert.Equal(step.Stops[2].LiftMm, step.RawLiftMm[2] - step.RawLiftMm[0], 1e-12);
            Assert.InRange(step.Removed.AreaMm2, 1e-6, 2);
            double lost = AreaMm2(before.Blade) + AreaMm2(before.Spring) - AreaMm2(step.Blade) - AreaMm2(step.Spring);
            Assert.Equal(lost, step.Removed.AreaMm2, 1e-7);
            Assert.Equal(step.Removed.AreaMm2, step.Removed.Regions.Sum(AreaMm2), 1e-5);
            Assert.Equal(before.Stops.Sum(stop => stop.Contacts.Count), step.Removed.Depths.Count);
            before = step;
        }

        Assert.Equal(
            [false, false, false, false, false, true, true, false],
            report.Steps.Select(step => step.Removed.FromSpring)
        );
        Assert.Contains("in its handle", Assert.Single(report.Steps[^1].Cautions), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Depths_are_told_at_the_contacts_there_were()
    {
        Wire.SimulateReport report = await SimulateAsync(
            PassRequests.Of(PassRequests.Slice(Wire.BladeFace.ClosedFace, 0.03, 0.03))
        );

        Wire.ContactDepth[] closed = [.. report.Steps[0].Removed.Depths.Where(depth => depth.Stop == Wire.Stop.Closed)];
        Assert.Equal([0, 1], closed.Select(depth => depth.ContactIndex));

        // A sharp corner goes sideways a little as well as in.
        Assert.All(closed, depth => Assert.Equal(0.03, depth.DepthMm, 1e-4));
    }

    [Fact]
    public async Task Findings_that_come_and_go_with_a_pass_are_told()
    {
        // The closed face loses its hollow ends, and with a relief it gets them back.
        Wire.SimulateRequest request = PassRequests.Of(
            PassRequests.Slice(Wire.BladeFace.ClosedFace, 0.09, 0.09),
            new Wire.Pass
            {
                ReliefArc = new Wire.ReliefArc
                {
                    Face = new Wire.Site { BladeFace = Wire.BladeFace.ClosedFace },
                    DepthMm = 0.05,
                    FrontMarginMm = 0.4,
                    RearMarginMm = 0.4,
                },
            }
        );
        Wire.SimulateReport report = await SimulateAsync(request);

        Assert.Contains(report.Steps[0].NewFindings, finding => finding.Code == "FACE_CONTACT");
        Assert.Contains(report.Steps[1].SettledFindings, finding => finding.Code == "FACE_CONTACT");
        Assert.Equal(Wire.Verdict.NeedsWork, report.Steps[0].Verdict);
    }

    [Fact]
    public async Task Outlines_come_back_where_they_were_drawn()
    {
        DrawnKnife drawn = KnifeCatalogue.Wagtail.ToDrawn(_turnedOver, Angle.FromDegrees(180));
        Wire.CheckRequest check = Requests.Outlines(drawn);
        check.Knife.DrawnBladeAngleDeg = 180;
        Wire.SimulateReport report = await SimulateAsync(
            PassRequests.On(check, PassRequests.Round(Wire.BladeFace.OpenCorner, 0.5))
        );

        Outline start = ToOutline(report.Start.Blade);
        Outline left = ToOutline(report.Steps[0].Blade);
        Outline off = ToOutline(Assert.Single(report.Steps[0].Removed.Regions));
        Assert.All(start.Edges, edge => Assert.Equal(0, drawn.Blade.SignedDistanceMm(edge.PointAt(0.5)), 1e-9));
        Assert.Equal(start.AreaMm2 - left.AreaMm2, off.AreaMm2, 1e-9);
        Assert.All(off.Edges, edge => Assert.True(start.SignedDistanceMm(edge.PointAt(0.5)) > -1e-9));
    }

    [Fact]
    public async Task The_drawing_has_a_layer_a_pass_with_what_comes_off_and_the_outline_after()
    {
        Wire.SimulateRequest request = PassRequests.On(
            Requests.Drawing(LooseDrawing.Of(KnifeCatalogue.Wagtail.ToDrawn())),
            PassRequests.OfEachKind()
        );
        request.Artifacts.Add(Wire.ArtifactKind.Dxf);
        Wire.SimulateResponse response = await service.Simulator.SimulateAsync(request);

        DxfReadOptions options = DxfReadOptions.Default;
        DxfDrawing drawing = DxfReader.Read(response.Artifacts[0].Content.ToByteArray(), options).Drawing!;
        Assert.Equal("passes.dxf", response.Artifacts[0].FileName);
        Assert.NotEmpty(DxfContours.ContoursOf(drawing, "BLADE", options.JoinToleranceMm).Contours);
        for (int i = 0; i < request.Passes.Count; i++)
        {
            Wire.SimulationStep step = response.Report.Steps[i];
            double[] areas =
            [
                .. DxfContours
                    .ContoursOf(drawing, $"FLUSHBACK_PASS_{i + 1:00}", options.JoinToleranceMm)
                    .Contours.Select(contour => contour.Outline.AreaMm2)
                    .Order(),
            ];
            double left = AreaMm2(step.Removed.FromSpring ? step.Spring : step.Blade);
            Assert.Equal(step.Removed.Regions.Count + 1, areas.Length);
            Assert.Equal(left, areas[^1], 1e-6);
            Assert.Equal(step.Removed.AreaMm2, areas[..^1].Sum(), 1e-4);
        }
    }

    [Fact]
    public async Task Every_file_is_made_once_and_the_same_request_gets_the_same_bytes()
    {
        Wire.SimulateRequest request = PassRequests.Of(PassRequests.OfEachKind());
        request.Artifacts.AddRange([
            Wire.ArtifactKind.Text,
            Wire.ArtifactKind.Html,
            Wire.ArtifactKind.Json,
            Wire.ArtifactKind.Dxf,
        ]);

        Wire.SimulateResponse first = await service.Simulator.SimulateAsync(request);
        Wire.SimulateResponse second = await service.Simulator.SimulateAsync(request);

        Assert.Equal(
            ["passes.txt", "passes.html", "report.json", "passes.dxf"],
            first.Artifacts.Select(artifact => artifact.FileName)
        );
        Assert.Equal(first.ToByteArray(), second.ToByteArray());
        Assert.Equal(first.Report, Wire.SimulateReport.Parser.ParseJson(first.Artifacts[2].Content.ToStringUtf8()));
    }

    private async Task<Wire.SimulateReport> SimulateAsync(Wire.SimulateRequest request) =>
        (await service.Simulator.SimulateAsync(request)).Report;

    private static double AreaMm2(Wire.Outline outline) => ToOutline(outline).AreaMm2;

    private static Outline ToOutline(Wire.Outline outline) =>
        Outline.FromVertices([.. outline.Vertices.Select(vertex => new Vertex(vertex.XMm, vertex.YMm, vertex.Bulge))]);
}
