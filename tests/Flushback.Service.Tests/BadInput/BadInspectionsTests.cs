using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf;
using Grpc.Core;

namespace Flushback.Service.Tests.BadInput;

public sealed class BadInspectionsTests(RunningService service) : IClassFixture<RunningService>
{
    /// <summary>What is asked, the field it is about, and the reason.</summary>
    public static TheoryData<Action<Wire.InspectRequest>, string, string> Refusals =>
        new()
        {
            { request => request.Dxf = ByteString.Empty, "dxf", "EMPTY" },
            { request => request.Dxf = ByteString.CopyFromUtf8("Dear shop,\n"), "dxf", "DXF_NOT_DXF" },
            { request => request.Dxf = WithoutUnit(), "unit", "DXF_UNIT_MISSING" },
            { request => request.Unit = (Wire.LengthUnit)99, "unit", "UNKNOWN_VALUE" },
            { request => request.Name = new string('a', 201), "name", "TOO_LONG" },
            { request => request.Name = "a\u0007", "name", "CONTROL_CHARACTER" },
            { Set(s => s.JoinToleranceMm = -0.001), "settings.join_tolerance_mm", "OUT_OF_RANGE" },
            { Set(s => s.JoinToleranceMm = 1.5), "settings.join_tolerance_mm", "OUT_OF_RANGE" },
            { Set(s => s.MicroSegmentMm = -1), "settings.micro_segment_mm", "OUT_OF_RANGE" },
            { Set(s => s.TinyFeatureMm = 101), "settings.tiny_feature_mm", "OUT_OF_RANGE" },
            { Set(s => s.CutterDiameterMm = 0), "settings.cutter_diameter_mm", "OUT_OF_RANGE" },
            { Set(s => s.LeastWebMm = -1), "settings.least_web_mm", "OUT_OF_RANGE" },
            { Set(s => s.PinDiametersMm.Add([2.4, 0])), "settings.pin_diameters_mm[1]", "OUT_OF_RANGE" },
            { Set(s => s.PinDiametersMm.Add(double.NaN)), "settings.pin_diameters_mm[0]", "NOT_FINITE" },
            { Set(s => s.KerfMm = 0), "settings.kerf_mm", "OUT_OF_RANGE" },
            { Set(s => s.KerfMm = 25), "settings.kerf_mm", "OUT_OF_RANGE" },
            { Set(s => s.GrindingStockMm = -0.1), "settings.grinding_stock_mm", "OUT_OF_RANGE" },
            { Set(s => s.CutLayers.Add("")), "settings.cut_layers[0]", "EMPTY" },
            { Set(s => s.CutLayers.Add(["PLATE", "Blech"])), "settings.cut_layers[1]", "LAYER_MISSING" },
            { Set(s => s.CutLayers.Add("a\n")), "settings.cut_layers[0]", "CONTROL_CHARACTER" },
            { Set(s => s.FinishedLayer = "Fertig"), "settings.finished_layer", "LAYER_MISSING" },
            { Set(s => s.FinishedLayer = new string('a', 201)), "settings.finished_layer", "TOO_LONG" },
            { Set(SameLayer), "settings.finished_layer", "SAME_LAYER" },
            { Ask(Wire.ArtifactKind.CutPathDxf), "settings.kerf_mm", "MISSING" },
            { Ask(Wire.ArtifactKind.Csv), "artifacts[0]", "NOT_MADE" },
            { Ask(Wire.ArtifactKind.Dxf), "artifacts[0]", "NOT_MADE" },
            { Ask(Wire.ArtifactKind.Unspecified), "artifacts[0]", "UNSPECIFIED" },
            { Ask(Wire.ArtifactKind.Text, Wire.ArtifactKind.Text), "artifacts[1]", "DUPLICATE" },
            { Ask((Wire.ArtifactKind)99), "artifacts[0]", "UNKNOWN_VALUE" },
        };

    [Theory]
    [MemberData(nameof(Refusals))]
    public async Task Each_is_refused_with_its_field_and_a_sentence(
        Action<Wire.InspectRequest> spoil,
        string field,
        string reason
    )
    {
        Wire.InspectRequest request = SheetRequests.Of(SheetRequests.Sound());
        spoil(request);

        Refused refused = await Refused.InspectAsync(service.Inspector, request);

        Assert.Equal(StatusCode.InvalidArgument, refused.Code);
        Assert.Equal([(field, reason)], refused.Violations);
        refused.AssertSentences();
    }

    [Fact]
    public async Task Everything_wrong_is_told_at_once()
    {
        Wire.InspectRequest request = SheetRequests.Of(SheetRequests.Sound(), Wire.ArtifactKind.Csv);
        request.Settings.KerfMm = -1;
        request.Settings.LeastWebMm = -1;

        Refused refused = await Refused.InspectAsync(service.Inspector, request);

        Assert.Equal(
            ["artifacts[0]", "settings.least_web_mm", "settings.kerf_mm"],
            refused.Violations.Select(violation => violation.Field)
        );
    }

    [Fact]
    public async Task A_drawing_without_a_size_has_no_unit_to_guess()
    {
        Wire.InspectRequest request = SheetRequests.Of(new LooseDrawing { Units = null });
        request.GuessUnit = true;

        Refused refused = await Refused.InspectAsync(service.Inspector, request);

        Assert.Equal([("unit", "DXF_UNIT_MISSING")], refused.Violations);
    }

    [Theory]
    [InlineData(Wire.ArtifactKind.RepairedDxf)]
    [InlineData(Wire.ArtifactKind.CutPathDxf)]
    public async Task A_check_makes_no_file_of_an_inspection(Wire.ArtifactKind kind)
    {
        Refused refused = await Refused.CheckAsync(service.Checker, Requests.Outlines(kind));

        Assert.Equal([("artifacts[0]", "NOT_MADE")], refused.Violations);
        refused.AssertSentences();
    }

    private static Action<Wire.InspectRequest> Set(Action<Wire.InspectionSettings> set) =>
        request => set(request.Settings);

    private static Action<Wire.InspectRequest> Ask(params Wire.ArtifactKind[] kinds) =>
        request => request.Artifacts.AddRange(kinds);

    private static void SameLayer(Wire.InspectionSettings settings)
    {
        settings.CutLayers.Add("PLATE");
        settings.FinishedLayer = "Plate";
    }

    private static ByteString WithoutUnit() => ByteString.CopyFrom(SheetRequests.Sound(units: null).ToBytes());
}
