using Flushback.Catalogue.Designs;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Grpc.Core;

namespace Flushback.Service.Tests.BadInput;

public sealed class BadPlansTests(RunningService service) : IClassFixture<RunningService>
{
    /// <summary>What is asked, the field it is about, and the reason.</summary>
    public static TheoryData<Action<Wire.PlanRequest>, string, string> Refusals =>
        new()
        {
            { request => request.Knife = null, "knife", "MISSING" },
            { Plan(plan => plan.RestWindowDeg = 0), "plan.rest_window_deg", "OUT_OF_RANGE" },
            { Plan(plan => plan.RestWindowDeg = 46), "plan.rest_window_deg", "OUT_OF_RANGE" },
            { Plan(plan => plan.OpenWindowDeg = -1), "plan.open_window_deg", "OUT_OF_RANGE" },
            { Plan(plan => plan.LeastCornerRadiusMm = -0.1), "plan.least_corner_radius_mm", "OUT_OF_RANGE" },
            { Plan(plan => plan.LeastCornerRadiusMm = double.NaN), "plan.least_corner_radius_mm", "NOT_FINITE" },
            { Plan(plan => plan.StockKeptMm = -0.1), "plan.stock_kept_mm", "OUT_OF_RANGE" },
            { Plan(plan => plan.StockKeptMm = 101), "plan.stock_kept_mm", "OUT_OF_RANGE" },
            { Plan(plan => plan.MostOffOpenFlatMm = -1), "plan.most_off_open_flat_mm", "OUT_OF_RANGE" },
            { Plan(plan => plan.Relief = new() { DepthMm = 0 }), "plan.relief.depth_mm", "OUT_OF_RANGE" },
            {
                Plan(plan => plan.Relief = new() { DepthMm = 1, MarginMm = -1 }),
                "plan.relief.margin_mm",
                "OUT_OF_RANGE"
            },
            {
                Plan(plan => plan.TipDepth = new() { LeastMm = 2, MostMm = 1 }),
                "plan.tip_depth.most_mm",
                "OUT_OF_RANGE"
            },
            { Plan(plan => plan.TipDepth = new() { LeastMm = -101 }), "plan.tip_depth.least_mm", "OUT_OF_RANGE" },
            { NoHandle, "plan.tip_depth", "NEEDS_HANDLE" },
            { request => request.Remains = new() { LeastPinWallMm = -1 }, "remains.least_pin_wall_mm", "OUT_OF_RANGE" },
            {
                request => request.Bench = new() { Closed = new() { ToleranceMm = 0 } },
                "bench.closed.tolerance_mm",
                "OUT_OF_RANGE"
            },
            { request => request.Artifacts.Add(Wire.ArtifactKind.Csv), "artifacts[0]", "NOT_MADE" },
            { request => request.Artifacts.Add((Wire.ArtifactKind)99), "artifacts[0]", "UNKNOWN_VALUE" },
            {
                request => request.Artifacts.Add([Wire.ArtifactKind.CardPdf, Wire.ArtifactKind.CardPdf]),
                "artifacts[1]",
                "DUPLICATE"
            },
            { Measured(measured => measured.OpenHeightMm = 0.1), "measured", "NOTHING_MEASURED" },
            { Measured(measured => measured.ClosedMm = 101), "measured.closed_mm", "OUT_OF_RANGE" },
            {
                Closed(measured => measured.HalfStopMm = double.PositiveInfinity),
                "measured.half_stop_mm",
                "NOT_FINITE"
            },
            { Closed(measured => measured.OpenHeightMm = -101), "measured.open_height_mm", "OUT_OF_RANGE" },
            { Closed(measured => measured.HalfStopRestDeg = 136), "measured.half_stop_rest_deg", "OUT_OF_RANGE" },
            { Closed(measured => measured.ClosedRestDeg = 90), "measured.closed_rest_deg", "OUT_OF_RANGE" },
            { Closed(measured => measured.MostOffsetMm = 0), "measured.most_offset_mm", "OUT_OF_RANGE" },
            { Closed(measured => measured.ClosedMm = 5), "measured", "NOT_EXPLAINED" },
            { NoHalfStop, "measured", "NO_SUCH_STOP" },
            { request => request.Name = "a\u0007b", "name", "CONTROL_CHARACTER" },
        };

    [Theory]
    [MemberData(nameof(Refusals))]
    public async Task Each_is_refused_with_its_field_and_a_sentence(
        Action<Wire.PlanRequest> spoil,
        string field,
        string reason
    )
    {
        Wire.PlanRequest request = PlanRequests.High();
        spoil(request);

        Refused refused = await Refused.PlanAsync(service.Simulator, request);

        Assert.Equal(StatusCode.InvalidArgument, refused.Code);
        Assert.Equal([(field, reason)], refused.Violations);
        refused.AssertSentences();
    }

    [Fact]
    public async Task All_that_is_wrong_is_told_at_once()
    {
        Wire.PlanRequest request = PlanRequests.High(Wire.ArtifactKind.Csv);
        request.Plan = new Wire.PlanSettings { StockKeptMm = -1, RestWindowDeg = 0 };
        request.Measured = new Wire.MeasuredReadings();

        Refused refused = await Refused.PlanAsync(service.Simulator, request);

        Assert.Equal(
            ["artifacts[0]", "measured", "plan.rest_window_deg", "plan.stock_kept_mm"],
            refused.Violations.Select(violation => violation.Field).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public async Task More_than_is_allowed_is_refused_with_the_limit()
    {
        RunningService small = await RunningService.StartAsync("--Limits:Vertices=20");

        Refused refused = await Refused.PlanAsync(small.Simulator, PlanRequests.High());

        Assert.Equal(StatusCode.ResourceExhausted, refused.Code);
        Assert.Equal("TOO_MANY_VERTICES", refused.Limit!.Reason);
        await small.DisposeAsync();
    }

    private static Action<Wire.PlanRequest> Plan(Action<Wire.PlanSettings> spoil) =>
        request => spoil(request.Plan = new Wire.PlanSettings());

    private static Action<Wire.PlanRequest> Measured(Action<Wire.MeasuredReadings> spoil) =>
        request => spoil(request.Measured = new Wire.MeasuredReadings());

    private static Action<Wire.PlanRequest> Closed(Action<Wire.MeasuredReadings> spoil) =>
        request => spoil(request.Measured = new Wire.MeasuredReadings { ClosedMm = 0.6 });

    private static void NoHandle(Wire.PlanRequest request)
    {
        request.Knife.Outlines.Handle = null;
        request.Plan = new Wire.PlanSettings
        {
            TipDepth = new Wire.LengthWindow { LeastMm = 1, MostMm = 2 },
        };
    }

    private static void NoHalfStop(Wire.PlanRequest request)
    {
        request.Knife = Requests.Outlines(KnifeCatalogue.Dunlin.ToDrawn()).Knife;
        request.Measured = new Wire.MeasuredReadings { HalfStopMm = 0.1 };
    }
}
