using System.Text.Json;
using Flushback.Dxf.Tests;
using Flushback.Service.Tests.Hosting;
using Google.Protobuf;

namespace Flushback.Service.Tests.Answers;

/// <summary>The drawings of a pattern, as another library, a check and an inspection read them.</summary>
public sealed class PatternDrawingsTests(RunningService service) : IClassFixture<RunningService>
{
    private const double InchMm = 25.4;

    public static TheoryData<Wire.DxfVersion, Wire.LengthUnit, string> Forms =>
        new()
        {
            { Wire.DxfVersion.Unspecified, Wire.LengthUnit.Unspecified, "AC1015" },
            { Wire.DxfVersion.R12, Wire.LengthUnit.Millimetre, "AC1009" },
            { Wire.DxfVersion.R12, Wire.LengthUnit.Inch, "AC1009" },
            { Wire.DxfVersion.R2000, Wire.LengthUnit.Inch, "AC1015" },
            { Wire.DxfVersion.R2007, Wire.LengthUnit.Millimetre, "AC1021" },
            { Wire.DxfVersion.R2018, Wire.LengthUnit.Inch, "AC1032" },
        };

    [Theory]
    [MemberData(nameof(Forms))]
    public async Task Another_library_finds_no_fault_and_every_outline_and_hole_where_it_is(
        Wire.DxfVersion version,
        Wire.LengthUnit unit,
        string mark
    )
    {
        Wire.GenerateResponse response = await GenerateAsync(version, unit, Ground());
        double unitMm = unit == Wire.LengthUnit.Inch ? InchMm : 1;
        foreach (Wire.Artifact artifact in response.Artifacts)
        {
            JsonElement dump = Referee.Dump(artifact.Content.ToByteArray());
            Assert.Empty(dump.GetProperty("errors").EnumerateArray());
            Assert.Empty(dump.GetProperty("fixes").EnumerateArray());
            Assert.Equal(mark, dump.GetProperty("version").GetString());
        }

        JsonElement pattern = Referee.Dump(response.Artifacts[0].Content.ToByteArray());
        foreach (Wire.PatternPiece piece in response.Pattern.Pieces)
        {
            Wire.Outline seen = PolylineOn(pattern, piece.Kind.ToString().ToUpperInvariant(), unitMm);
            AssertSame(piece.Finished, seen);
        }

        Wire.Circle[] circles = [.. CirclesOn(pattern, "PINS", unitMm)];
        Assert.Equal(3, circles.Length);
        foreach ((Wire.PatternHole hole, Wire.Circle circle) in response.Pattern.Pieces[2].Holes.Zip(circles))
        {
            Assert.Equal(hole.Circle.Centre.XMm, circle.Centre.XMm, 1e-9);
            Assert.Equal(hole.Circle.Centre.YMm, circle.Centre.YMm, 1e-9);
            Assert.Equal(hole.Circle.DiameterMm, circle.DiameterMm, 1e-9);
        }
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public async Task A_check_of_the_drawing_reads_what_the_page_wants(
        Wire.DxfVersion version,
        Wire.LengthUnit unit,
        string mark
    )
    {
        _ = mark;
        Wire.GenerateResponse response = await GenerateAsync(version, unit, Ground());

        Wire.CheckResponse check = await service.Checker.CheckAsync(
            new Wire.CheckRequest
            {
                Knife = new Wire.Knife { Drawing = new Wire.KnifeDrawing { Dxf = response.Artifacts[0].Content } },
            }
        );

        PatternTests.AssertReads(check.Report, 5 * 0.0254, 15 * 0.0254);
        Assert.Equal(Wire.Verdict.Good, check.Report.Verdict);
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public async Task An_inspection_of_the_cut_sheet_has_nothing_to_say(
        Wire.DxfVersion version,
        Wire.LengthUnit unit,
        string mark
    )
    {
        _ = mark;
        Wire.GenerateResponse response = await GenerateAsync(version, unit, new Wire.Pattern());

        Wire.InspectReport report = await InspectAsync(response.Artifacts[1].Content, new Wire.InspectionSettings());

        Assert.Empty(report.Findings);
        Assert.Equal(Wire.Verdict.Good, report.Verdict);
        Assert.Equal(["BLADE", "SPRING", "HANDLE"], report.CutLayers);
        Assert.Equal([1, 2, 3], report.Parts.Select(part => part.Holes.Count));
        Assert.All(report.Parts.SelectMany(part => part.Holes), hole => Assert.True(hole.Fit.Fits));
    }

    [Fact]
    public async Task The_stock_of_the_cut_sheet_is_measured_as_asked_for()
    {
        Wire.GenerateResponse response = await GenerateAsync(default, default, Ground());

        Wire.InspectReport report = await InspectAsync(
            response.Artifacts[1].Content,
            new Wire.InspectionSettings { FinishedLayer = "FLUSHBACK_FINISHED", GrindingStockMm = 0.2 }
        );

        Assert.Equal(0.25, report.Parts[0].LeastStock.LeastMm, 1e-6);
        Assert.Equal(0.2, report.Parts[1].LeastStock.LeastMm, 1e-6);
        Assert.Equal([true, true, false], response.Pattern.Pieces.Select(piece => piece.Rough is not null));
    }

    [Fact]
    public async Task The_middle_of_the_kerf_runs_where_an_inspection_would_have_it()
    {
        Wire.GenerateResponse response = await GenerateAsync(default, default, Ground());

        Wire.InspectReport report = await InspectAsync(
            response.Artifacts[1].Content,
            new Wire.InspectionSettings { KerfMm = 0.18, CutLayers = { "BLADE", "SPRING", "HANDLE" } }
        );
        JsonElement sheet = Referee.Dump(response.Artifacts[1].Content.ToByteArray());

        Wire.CutPath[] outside = [.. report.CutPaths.Where(path => !path.IsHole)];
        Assert.Equal(3, outside.Length);
        Assert.Equal(outside.Length, PolylinesOn(sheet, "FLUSHBACK_CUT_OUTSIDE").Count());
        foreach ((Wire.CutPath path, JsonElement drawn) in outside.Zip(PolylinesOn(sheet, "FLUSHBACK_CUT_OUTSIDE")))
        {
            AssertSame(path.Path, OutlineOf(drawn, 1));
        }

        Assert.Equal(6, PolylinesOn(sheet, "FLUSHBACK_CUT_INSIDE").Count());
    }

    public static TheoryData<Wire.Arrangement, bool, string[], int[], string[]> Pairs =>
        new()
        {
            {
                Wire.Arrangement.SharedSpring,
                true,
                ["BLADE", "SPRING", "HANDLE", "BLADE_2"],
                [1, 1, 3, 1],
                ["HANDLE, cut two", "BLADE_2, cut one, 1.80 mm thick"]
            },
            {
                Wire.Arrangement.TwoSprings,
                false,
                ["BLADE", "SPRING", "HANDLE", "BLADE_2", "SPRING_2", "LINER_BETWEEN"],
                [1, 2, 3, 1, 2, 3],
                ["HANDLE, cut two", "LINER_BETWEEN, cut one, 0.50 mm thick"]
            },
            {
                Wire.Arrangement.TwoSprings,
                true,
                ["BLADE", "SPRING", "HANDLE", "BLADE_2", "SPRING_2", "HANDLE_2", "LINER_BETWEEN"],
                [1, 2, 3, 1, 2, 3, 6],
                ["HANDLE, cut one", "HANDLE_2, cut one", "LINER_BETWEEN, cut one, 0.50 mm thick"]
            },
        };

    [Theory]
    [MemberData(nameof(Pairs))]
    public async Task The_drawings_of_two_blades_hold_every_piece_of_both_and_say_how_many_are_cut(
        Wire.Arrangement arrangement,
        bool atOtherEnd,
        string[] layers,
        int[] holes,
        string[] words
    )
    {
        Wire.GenerateResponse response = await service.Exporter.GenerateAsync(
            new Wire.GenerateRequest
            {
                Arrangement = arrangement,
                SecondBlade = new Wire.SecondBlade { AtOtherEnd = atOtherEnd },
                Artifacts = { Wire.ArtifactKind.PatternDxf, Wire.ArtifactKind.CutSheetDxf },
            }
        );

        Wire.InspectReport sheet = await InspectAsync(response.Artifacts[1].Content, new Wire.InspectionSettings());
        Assert.Empty(sheet.Findings);
        Assert.Equal(layers, sheet.CutLayers);
        Assert.Equal(holes, sheet.Parts.Select(part => part.Holes.Count));
        Assert.Equal(
            holes.Zip(layers, (count, layer) => (count, layer.EndsWith("_2", StringComparison.Ordinal))),
            response.Pattern.Pieces.Select(piece => (piece.Holes.Count, piece.Second))
        );
        string[] told =
        [
            .. EntitiesOn(Referee.Dump(response.Artifacts[1].Content.ToByteArray()), "FLUSHBACK_TEXT")
                .Select(text => text.GetProperty("text").GetString()!),
        ];
        Assert.Equal(layers.Length, told.Length);
        Assert.All(told, text => Assert.Contains(", cut ", text, StringComparison.Ordinal));
        Assert.All(words, text => Assert.Contains(text, told));

        Wire.CheckResponse second = await service.Checker.CheckAsync(
            new Wire.CheckRequest
            {
                Knife = new Wire.Knife
                {
                    Drawing = new Wire.KnifeDrawing
                    {
                        Dxf = response.Artifacts[0].Content,
                        Layers = new Wire.LayerRoles
                        {
                            Blade = "BLADE_2",
                            Spring = "SPRING_2",
                            Pins = "PINS_2",
                        },
                    },
                },
            }
        );
        PatternTests.AssertReads(second.Report, 5 * 0.0254, 15 * 0.0254);
    }

    private static Wire.Pattern Ground() =>
        new()
        {
            Stock = new()
            {
                BladeMm = 0.25,
                SpringMm = 0.2,
                KerfMm = 0.18,
            },
        };

    private async Task<Wire.GenerateResponse> GenerateAsync(
        Wire.DxfVersion version,
        Wire.LengthUnit unit,
        Wire.Pattern pattern
    ) =>
        await service.Exporter.GenerateAsync(
            new Wire.GenerateRequest
            {
                Pattern = pattern,
                DxfVersion = version,
                Unit = unit,
                Artifacts = { Wire.ArtifactKind.PatternDxf, Wire.ArtifactKind.CutSheetDxf },
            }
        );

    private async Task<Wire.InspectReport> InspectAsync(ByteString dxf, Wire.InspectionSettings settings) =>
        (await service.Inspector.InspectAsync(new Wire.InspectRequest { Dxf = dxf, Settings = settings })).Report;

    private static IEnumerable<JsonElement> EntitiesOn(JsonElement dump, string layer) =>
        dump.GetProperty("entities").EnumerateArray().Where(entity => entity.GetProperty("layer").GetString() == layer);

    private static IEnumerable<JsonElement> PolylinesOn(JsonElement dump, string layer) =>
        EntitiesOn(dump, layer).Where(entity => entity.TryGetProperty("vertices", out _));

    private static Wire.Outline PolylineOn(JsonElement dump, string layer, double unitMm)
    {
        JsonElement polyline = Assert.Single(PolylinesOn(dump, layer));
        Assert.True(polyline.GetProperty("closed").GetBoolean());
        return OutlineOf(polyline, unitMm);
    }

    private static Wire.Outline OutlineOf(JsonElement polyline, double unitMm)
    {
        Wire.Outline outline = new();
        foreach (JsonElement vertex in polyline.GetProperty("vertices").EnumerateArray())
        {
            outline.Vertices.Add(
                new Wire.Vertex
                {
                    XMm = vertex[0].GetDouble() * unitMm,
                    YMm = vertex[1].GetDouble() * unitMm,
                    Bulge = vertex[2].GetDouble(),
                }
            );
        }

        return outline;
    }

    private static IEnumerable<Wire.Circle> CirclesOn(JsonElement dump, string layer, double unitMm) =>
        EntitiesOn(dump, layer)
            .Select(circle => new Wire.Circle
            {
                Centre = new Wire.Point
                {
                    XMm = circle.GetProperty("centre")[0].GetDouble() * unitMm,
                    YMm = circle.GetProperty("centre")[1].GetDouble() * unitMm,
                },
                DiameterMm = 2 * circle.GetProperty("radius").GetDouble() * unitMm,
            });

    // Both in order from the same vertex.
    private static void AssertSame(Wire.Outline expected, Wire.Outline seen)
    {
        Assert.Equal(expected.Vertices.Count, seen.Vertices.Count);
        foreach ((Wire.Vertex one, Wire.Vertex other) in expected.Vertices.Zip(seen.Vertices))
        {
            Assert.Equal(one.XMm, other.XMm, 1e-9);
            Assert.Equal(one.YMm, other.YMm, 1e-9);
            Assert.Equal(one.Bulge, other.Bulge, 1e-12);
        }
    }
}
