using System.Text;
using Flushback.Catalogue.Designs;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Geometry;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;

namespace Flushback.Service.Tests.Answers;

public sealed class ArtifactsTests(RunningService service) : IClassFixture<RunningService>
{
    private static readonly Wire.ArtifactKind[] _all =
    [
        Wire.ArtifactKind.Dxf,
        Wire.ArtifactKind.Text,
        Wire.ArtifactKind.Html,
        Wire.ArtifactKind.Json,
        Wire.ArtifactKind.Csv,
    ];

    [Fact]
    public async Task Files_come_in_the_order_asked_with_name_and_media_type()
    {
        Wire.CheckResponse response = await service.Checker.CheckAsync(Requests.Outlines(_all));

        Assert.Equal(_all, response.Artifacts.Select(artifact => artifact.Kind));
        Assert.Equal(
            [
                ("contacts.dxf", "image/vnd.dxf"),
                ("report.txt", "text/plain"),
                ("report.html", "text/html"),
                ("report.json", "application/json"),
                ("lift-curve.csv", "text/csv"),
            ],
            response.Artifacts.Select(artifact => (artifact.FileName, artifact.MediaType))
        );
        Assert.All(response.Artifacts, artifact => Assert.NotEmpty(artifact.Content));
    }

    [Fact]
    public async Task No_file_is_made_unasked() =>
        Assert.Empty((await service.Checker.CheckAsync(Requests.Outlines())).Artifacts);

    [Fact]
    public async Task The_json_reads_back_as_the_very_report()
    {
        Wire.CheckResponse response = await service.Checker.CheckAsync(Requests.Outlines(Wire.ArtifactKind.Json));

        string json = response.Artifacts.Single().Content.ToStringUtf8();

        Assert.Equal(response.Report, Wire.CheckReport.Parser.ParseJson(json));
        Assert.Contains("\n  \"stops\": [", json, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_drawing_keeps_every_line_of_the_users_own()
    {
        LooseDrawing drawing = LooseDrawing.Of(KnifeCatalogue.Wagtail.ToDrawn());

        string written = Encoding.ASCII.GetString(await DrawAsync(Requests.Drawing(drawing, Wire.ArtifactKind.Dxf)));

        string entities = drawing.ToString();
        entities = entities[
            entities.IndexOf("ENTITIES", StringComparison.Ordinal)..entities.LastIndexOf(
                "0\nENDSEC",
                StringComparison.Ordinal
            )
        ];
        Assert.Contains(entities, written, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_drawing_shows_the_blade_in_each_stop_and_each_contact_marked()
    {
        Wire.CheckRequest request = Requests.Drawing(
            LooseDrawing.Of(KnifeCatalogue.Wagtail.ToDrawn()),
            Wire.ArtifactKind.Dxf
        );
        Wire.CheckResponse response = await service.Checker.CheckAsync(request);

        DxfDrawing written = Read(response.Artifacts.Single().Content.ToByteArray());

        double bladeMm2 = KnifeCatalogue.Wagtail.ToDrawn().Blade.AreaMm2;
        foreach (string layer in (string[])["FLUSHBACK_OPEN", "FLUSHBACK_HALF_STOP", "FLUSHBACK_CLOSED"])
        {
            ChainResult chains = DxfContours.ContoursOf(written, layer, 0.001);
            Assert.Equal(2, chains.Contours.Length);
            Assert.Equal(bladeMm2, chains.Contours.Max(contour => contour.Outline.AreaMm2), 1e-6);
        }

        IEnumerable<Point> marks = DxfContours
            .ContoursOf(written, "FLUSHBACK_CONTACTS", 0.001)
            .Circles.Select(circle => circle.Circle.Centre);
        Assert.Equal(
            response.Report.Stops.SelectMany(stop => stop.Contacts).Select(contact => (contact.At.XMm, contact.At.YMm)),
            marks.Select(mark => (mark.X, mark.Y))
        );
    }

    [Fact]
    public async Task A_contact_has_the_same_number_in_the_drawing_as_in_the_report()
    {
        Wire.CheckResponse response = await service.Checker.CheckAsync(
            Requests.Outlines(Wire.ArtifactKind.Dxf, Wire.ArtifactKind.Text)
        );
        string drawing = response.Artifacts[0].Content.ToStringUtf8();
        string report = response.Artifacts[1].Content.ToStringUtf8();

        // In the report: the number, then the faces; open has the contacts 1 and 2, so the half stop begins with 3.
        Assert.Contains("\n  3  closed corner on underside", report, StringComparison.Ordinal);
        foreach (string label in (string[])["open 1", "open 2", "half stop 3", "half stop 4", "closed 5", "closed 6"])
        {
            Assert.Contains(label, drawing, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_drawing_made_from_outlines_can_be_checked_again_and_reads_the_same()
    {
        Wire.CheckResponse first = await service.Checker.CheckAsync(Requests.Outlines(Wire.ArtifactKind.Dxf));

        Wire.CheckResponse again = await service.Checker.CheckAsync(
            Requests.Drawing(first.Artifacts.Single().Content.ToByteArray())
        );

        foreach ((Wire.StopReading a, Wire.StopReading b) in first.Report.Stops.Zip(again.Report.Stops))
        {
            Assert.Equal(a.LiftMm, b.LiftMm, 1e-9);
        }
    }

    private async Task<byte[]> DrawAsync(Wire.CheckRequest request) =>
        (await service.Checker.CheckAsync(request)).Artifacts.Single().Content.ToByteArray();

    private static DxfDrawing Read(byte[] dxf)
    {
        DxfReadResult result = DxfReader.Read(dxf, DxfReadOptions.Default);
        Assert.NotNull(result.Drawing);
        return result.Drawing;
    }
}
