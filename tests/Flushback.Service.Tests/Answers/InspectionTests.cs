using System.Text;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;

namespace Flushback.Service.Tests.Answers;

public sealed class InspectionTests(RunningService service) : IClassFixture<RunningService>
{
    private const double PlateMm2 = 60 * 20;
    private const double HoleRadiusMm = 1.2025;

    [Fact]
    public async Task A_sound_plate_has_one_part_with_a_hole_that_fits_its_pin()
    {
        Wire.InspectReport report = await InspectAsync(SheetRequests.Of(SheetRequests.Sound()));

        Assert.Equal("Plate", report.Name);
        Assert.Equal(Wire.Verdict.Good, report.Verdict);
        Assert.Equal(Wire.LengthUnit.Millimetre, report.Unit);
        Assert.Equal(["PLATE"], report.CutLayers);
        Wire.InspectedPart part = Assert.Single(report.Parts);
        Wire.InspectedHole hole = Assert.Single(part.Holes);
        Assert.Equal(PlateMm2 - (Math.PI * HoleRadiusMm * HoleRadiusMm), part.AreaMm2, 1e-9);
        Assert.Equal(160 + (Math.Tau * HoleRadiusMm), report.CutLengthMm, 1e-9);
        Assert.Equal(
            (0.0, 0.0, 60.0, 20.0),
            (report.BoxLow.XMm, report.BoxLow.YMm, report.BoxHigh.XMm, report.BoxHigh.YMm)
        );
        Assert.Equal(2 * HoleRadiusMm, hole.Circle.DiameterMm, 1e-12);

        // ISO 286, H7 up to 3 mm: 0 to +0.010 mm.
        Assert.Equal((2.4, "2.4 mm", true), (hole.Fit.PinMm, hole.Fit.PinName, hole.Fit.Fits));
        Assert.Equal((2.4, 2.41), (hole.Fit.LowestMm, Math.Round(hole.Fit.HighestMm, 9)));

        // From the hole to the plate's nearest side.
        Assert.Equal(10 - HoleRadiusMm, part.ThinnestWeb.ThicknessMm, 1e-9);
    }

    [Fact]
    public async Task A_missing_side_and_a_word_on_the_layer_are_findings_with_their_place()
    {
        Wire.InspectReport report = await InspectAsync(SheetRequests.Of(SheetRequests.Flawed()));

        Assert.Equal(Wire.Verdict.NeedsWork, report.Verdict);
        Wire.InspectFinding open = report.Findings.First(finding => finding.Code == "OPEN_CONTOUR");
        Assert.Equal(Wire.Severity.Fault, open.Severity);
        Assert.Equal("PLATE", open.Layer);
        Assert.NotEmpty(open.Handles);
        Assert.NotNull(open.At);
        Assert.EndsWith(".", open.Advice, StringComparison.Ordinal);
        Assert.Contains(report.Findings, finding => finding.Code == "NOT_FOR_CUTTING");
        Wire.OpenContour contour = Assert.Single(report.OpenContours);
        Assert.Equal(100, contour.LengthMm, 1e-9);
    }

    [Fact]
    public async Task Settings_reach_the_inspection()
    {
        Wire.InspectRequest request = SheetRequests.Of(SheetRequests.Sound());
        request.Settings = new Wire.InspectionSettings
        {
            LeastWebMm = 9,
            PinDiametersMm = { 3.2 },
            CutLayers = { "plate" },
        };

        Wire.InspectReport report = await InspectAsync(request);

        Wire.InspectFinding web = Assert.Single(report.Findings, finding => finding.Code == "THIN_WEB");
        Assert.Equal((10 - HoleRadiusMm, 9, "mm"), (Math.Round(web.Value, 9), web.Limit, web.Unit));
    }

    [Fact]
    public async Task An_absent_setting_and_its_default_give_the_same_bytes()
    {
        Wire.InspectRequest absent = SheetRequests.Of(SheetRequests.Twice(), Wire.ArtifactKind.Json);
        Wire.InspectRequest given = absent.Clone();
        absent.Settings = null;
        given.Settings = new Wire.InspectionSettings
        {
            JoinToleranceMm = 0.01,
            MicroSegmentMm = 0.02,
            TinyFeatureMm = 0.3,
            LeastWebMm = 0.8,
        };

        Assert.Equal(await service.Inspector.InspectAsync(given), await service.Inspector.InspectAsync(absent));
    }

    [Fact]
    public async Task The_caller_names_the_unit_over_the_file()
    {
        Wire.InspectRequest request = SheetRequests.Of(SheetRequests.Sound(units: 4));
        request.Unit = Wire.LengthUnit.Inch;

        Wire.InspectReport report = await InspectAsync(request);

        Assert.Equal(Wire.LengthUnit.Inch, report.Unit);
        Assert.Equal(60 * 25.4, report.BoxHigh.XMm, 1e-9);
    }

    [Theory]
    [InlineData(1.0, Wire.LengthUnit.Millimetre)]
    [InlineData(1 / 25.4, Wire.LengthUnit.Inch)]
    [InlineData(1000 / 25.4, Wire.LengthUnit.Thou)]
    [InlineData(0.001, Wire.LengthUnit.Metre)]
    public async Task A_guess_takes_the_unit_that_makes_a_plausible_size_and_says_so(double scale, Wire.LengthUnit unit)
    {
        Wire.InspectRequest request = SheetRequests.Of(SheetRequests.Sound(units: null, scale));
        request.GuessUnit = true;

        Wire.InspectReport report = await InspectAsync(request);

        Assert.Equal(unit, report.Unit);
        Assert.Equal(60, report.BoxHigh.XMm, 1e-6);
        Wire.InspectFinding guess = Assert.Single(report.Findings, finding => finding.Code == "UNIT_GUESSED");
        Assert.Equal(Wire.Severity.Warning, guess.Severity);
        Assert.Contains("60 x 20 mm (2.362 x 0.787 in)", guess.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task No_unit_is_guessed_where_the_file_states_one()
    {
        Wire.InspectRequest request = SheetRequests.Of(SheetRequests.Sound(units: 1));
        request.GuessUnit = true;

        Wire.InspectReport report = await InspectAsync(request);

        Assert.Equal(Wire.LengthUnit.Inch, report.Unit);
        Assert.DoesNotContain(report.Findings, finding => finding.Code == "UNIT_GUESSED");
    }

    [Fact]
    public async Task Files_come_in_the_order_asked_with_name_and_media_type()
    {
        Wire.InspectRequest request = SheetRequests.Of(
            SheetRequests.Twice(),
            Wire.ArtifactKind.CutPathDxf,
            Wire.ArtifactKind.RepairedDxf,
            Wire.ArtifactKind.Html,
            Wire.ArtifactKind.Json,
            Wire.ArtifactKind.Text
        );
        request.Settings.KerfMm = 0.2;

        Wire.InspectResponse response = await service.Inspector.InspectAsync(request);

        Assert.Equal(
            [
                (Wire.ArtifactKind.CutPathDxf, "cut-path.dxf", "image/vnd.dxf"),
                (Wire.ArtifactKind.RepairedDxf, "repaired.dxf", "image/vnd.dxf"),
                (Wire.ArtifactKind.Html, "report.html", "text/html"),
                (Wire.ArtifactKind.Json, "report.json", "application/json"),
                (Wire.ArtifactKind.Text, "report.txt", "text/plain"),
            ],
            response.Artifacts.Select(artifact => (artifact.Kind, artifact.FileName, artifact.MediaType))
        );
        Assert.All(response.Artifacts, artifact => Assert.NotEmpty(artifact.Content));
        Assert.Equal(
            response.Report,
            Wire.InspectReport.Parser.ParseJson(response.Artifacts[3].Content.ToStringUtf8())
        );
    }

    [Fact]
    public async Task The_cut_path_lies_half_a_kerf_outside_of_the_part_and_inside_of_the_hole_beside_the_users_own_lines()
    {
        LooseDrawing drawing = SheetRequests.Sound();
        Wire.InspectRequest request = SheetRequests.Of(drawing, Wire.ArtifactKind.CutPathDxf);
        request.Settings.KerfMm = 0.2;

        Wire.InspectResponse response = await service.Inspector.InspectAsync(request);
        byte[] written = response.Artifacts.Single().Content.ToByteArray();
        DxfDrawing read = DxfReader.Read(written, DxfReadOptions.Default).Drawing!;

        // Steiner: a convex outline grown by r with round corners has area A + P r + pi r^2.
        ChainResult outside = DxfContours.ContoursOf(read, "FLUSHBACK_CUT_OUTSIDE", 0.001);
        Assert.Equal(PlateMm2 + (160 * 0.1) + (Math.PI * 0.01), Assert.Single(outside.Contours).Outline.AreaMm2, 1e-9);
        ChainResult inside = DxfContours.ContoursOf(read, "FLUSHBACK_CUT_INSIDE", 0.001);
        Assert.Equal(HoleRadiusMm - 0.1, Assert.Single(inside.Circles).Circle.RadiusMm, 1e-9);

        string own = drawing.ToString();
        string entities = own[
            own.IndexOf("ENTITIES", StringComparison.Ordinal)..own.LastIndexOf("0\nENDSEC", StringComparison.Ordinal)
        ];
        Assert.Contains(entities, Encoding.ASCII.GetString(written), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_drawing_with_our_own_layers_in_it_is_inspected_as_if_they_were_not_there()
    {
        Wire.InspectRequest request = SheetRequests.Of(SheetRequests.Sound(), Wire.ArtifactKind.CutPathDxf);
        request.Settings.KerfMm = 0.2;
        Wire.InspectResponse first = await service.Inspector.InspectAsync(request);

        Wire.InspectReport again = await InspectAsync(SheetRequests.Of(first.Artifacts.Single().Content.ToByteArray()));

        Assert.Equal(["PLATE"], again.CutLayers);
        Assert.Equal(first.Report.Parts.Select(part => part.Contour), again.Parts.Select(part => part.Contour));
        Assert.Equal(first.Report.CutLengthMm, again.CutLengthMm);
    }

    [Fact]
    public async Task The_repaired_copy_has_nothing_left_of_what_the_changes_name()
    {
        Wire.InspectResponse response = await service.Inspector.InspectAsync(
            SheetRequests.Of(SheetRequests.Twice(), Wire.ArtifactKind.RepairedDxf, Wire.ArtifactKind.Text)
        );

        Assert.NotEmpty(response.Report.Changes);
        Assert.All(response.Report.Changes, change => Assert.EndsWith(".", change, StringComparison.Ordinal));
        Assert.Contains(response.Report.Findings, finding => finding.Code == "DUPLICATE");
        Assert.Contains(
            "Changed in the repaired copy",
            response.Artifacts[1].Content.ToStringUtf8(),
            StringComparison.Ordinal
        );

        Wire.InspectReport repaired = await InspectAsync(SheetRequests.Of(response.Artifacts[0].Content.ToByteArray()));
        Assert.Equal(Wire.Verdict.Good, repaired.Verdict);
        Assert.Equal(PlateMm2 - (Math.PI * HoleRadiusMm * HoleRadiusMm), Assert.Single(repaired.Parts).AreaMm2, 1e-9);
    }

    [Fact]
    public async Task No_changes_are_told_when_no_copy_was_asked_for() =>
        Assert.Empty((await InspectAsync(SheetRequests.Of(SheetRequests.Twice()))).Changes);

    private async Task<Wire.InspectReport> InspectAsync(Wire.InspectRequest request) =>
        (await service.Inspector.InspectAsync(request)).Report;
}
