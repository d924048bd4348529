using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf;
using Grpc.Core;
using Microsoft.Extensions.Options;

namespace Flushback.Service.Tests.BadInput;

public sealed class LimitsTests
{
    // A block in a block, and an array of four copies: group 70 counts its columns.
    private const string Nested =
        "0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nA\n70\n0\n10\n0\n20\n0\n0\nINSERT\n8\n0\n2\nB\n10\n0\n20\n0\n0\nENDBLK\n"
        + "0\nBLOCK\n2\nB\n70\n0\n10\n0\n20\n0\n0\nPOINT\n8\n0\n10\n0\n20\n0\n0\nENDBLK\n0\nENDSEC\n";

    private const string Array =
        "0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n2\nA\n70\n0\n10\n0\n20\n0\n0\nINSERT\n8\n0\n2\nB\n10\n0\n20\n0\n70\n4\n44\n1\n0\nENDBLK\n"
        + "0\nBLOCK\n2\nB\n70\n0\n10\n0\n20\n0\n0\nPOINT\n8\n0\n10\n0\n20\n0\n0\nENDBLK\n0\nENDSEC\n";

    /// <summary>The setting, and what makes a request go over it.</summary>
    public static TheoryData<string, string, Action<Wire.CheckRequest>> Over =>
        new()
        {
            { "Vertices", "8", _ => { } },
            { "Samples", "19", request => request.Bench = new Wire.BenchSettings { StepDeg = 1 } },
            { "FaceOverrides", "1", request => request.Knife.FaceOverrides.AddRange([Face(), Face()]) },
            { "MessageBytes", "1024", request => request.Name = new string('a', 1024) },
            { "Entities", "10", AskByDrawing },
            { "BlockDepth", "1", request => AskByDrawing(request, Nested) },
            { "ArrayCopies", "3", request => AskByDrawing(request, Array) },
            { "Seconds", "0.001", AskForSecondsOfWork },
        };

    [Theory]
    [MemberData(nameof(Over))]
    public async Task Over_a_limit_is_refused_with_its_name(string limit, string value, Action<Wire.CheckRequest> ask)
    {
        RunningService service = await RunningService.StartAsync($"--Limits:{limit}={value}");
        Wire.CheckRequest request = Requests.Outlines();
        ask(request);

        Refused refused = await Refused.CheckAsync(service.Checker, request);

        Assert.Equal(StatusCode.ResourceExhausted, refused.Code);
        Assert.Equal(limit, refused.Limit!.Metadata["limit"]);
        Assert.Equal(value, refused.Limit.Metadata["allowed"]);
        Assert.Equal("flushback.v1", refused.Limit.Domain);
        Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
        await service.DisposeAsync();
    }

    /// <summary>The setting, and what makes an inspection go over it.</summary>
    public static TheoryData<string, string, Action<Wire.InspectRequest>> InspectionsOver =>
        new()
        {
            { "CutLayers", "1", request => request.Settings.CutLayers.Add(["PLATE", "plate"]) },
            { "PinDiameters", "1", request => request.Settings.PinDiametersMm.Add([2.4, 3.2]) },
            { "MessageBytes", "1024", request => request.Name = new string('a', 1024) },
            { "Seconds", "0.001", request => request.Dxf = ByteString.CopyFrom(SecondsOfWork()) },
        };

    [Theory]
    [MemberData(nameof(InspectionsOver))]
    public async Task An_inspection_over_a_limit_is_refused_with_its_name(
        string limit,
        string value,
        Action<Wire.InspectRequest> ask
    )
    {
        RunningService service = await RunningService.StartAsync($"--Limits:{limit}={value}");
        Wire.InspectRequest request = SheetRequests.Of(SheetRequests.Sound());
        ask(request);

        Refused refused = await Refused.InspectAsync(service.Inspector, request);

        Assert.Equal(StatusCode.ResourceExhausted, refused.Code);
        Assert.Equal(limit, refused.Limit!.Metadata["limit"]);
        Assert.Equal(value, refused.Limit.Metadata["allowed"]);
        Assert.EndsWith(".", refused.Message, StringComparison.Ordinal);
        await service.DisposeAsync();
    }

    [Fact]
    public async Task A_drawing_of_more_vertices_than_allowed_is_not_inspected()
    {
        RunningService service = await RunningService.StartAsync("--Limits:Vertices=8");
        LooseDrawing drawing = SheetRequests.Sound();
        for (int i = 0; i < 9; i++)
        {
            drawing.Add("PLATE", new Edge(new Point(i, 30), new Point(i, 31)));
        }

        Refused refused = await Refused.InspectAsync(service.Inspector, SheetRequests.Of(drawing));

        Assert.Equal(StatusCode.ResourceExhausted, refused.Code);
        Assert.Equal("DXF_TOO_LARGE", refused.Limit!.Reason);
        await service.DisposeAsync();
    }

    [Fact]
    public async Task A_request_that_is_small_only_while_compressed_is_refused()
    {
        RunningService service = await RunningService.StartAsync();
        Wire.CheckRequest request = Requests.Drawing(new byte[6 * 1024 * 1024]);

        RpcException thrown = await Assert.ThrowsAsync<RpcException>(async () =>
            await service.Checker.CheckAsync(request, new Metadata { { "grpc-internal-encoding-request", "gzip" } })
        );

        Refused refused = Refused.From(thrown);
        Assert.Equal(StatusCode.ResourceExhausted, refused.Code);
        Assert.Equal("MessageBytes", refused.Limit!.Metadata["limit"]);
        await service.DisposeAsync();
    }

    [Theory]
    [InlineData(5)]
    [InlineData(60)]
    public async Task A_file_far_over_the_limit_is_refused_without_being_taken_in(int megabytes)
    {
        RunningService service = await RunningService.StartAsync();

        Refused refused = await Refused.CheckAsync(
            service.Checker,
            Requests.Drawing(new byte[megabytes * 1024 * 1024])
        );

        Assert.Equal(StatusCode.ResourceExhausted, refused.Code);
        Assert.Equal("MESSAGE_TOO_LARGE", refused.Limit!.Reason);
        await service.DisposeAsync();
    }

    [Theory]
    [InlineData("--Limits:Vertices=0")]
    [InlineData("--Limits:CoordinateMm=1e300")]
    public async Task A_limit_out_of_its_own_range_keeps_the_service_from_starting(string setting) =>
        await Assert.ThrowsAsync<OptionsValidationException>(() => RunningService.StartAsync(setting));

    [Fact]
    public async Task A_limit_with_a_misspelt_name_keeps_the_service_from_starting() =>
        await Assert.ThrowsAsync<InvalidOperationException>(() => RunningService.StartAsync("--Limits:Vertexes=5000"));

    /// <summary>Many seconds, so that no sluggish clock lets it through.</summary>
    private static void AskForSecondsOfWork(Wire.CheckRequest request) =>
        request.Knife = Requests.Outlines(FinelyDrawn.AtTheLimit()).Knife;

    private static void AskByDrawing(Wire.CheckRequest request) => AskByDrawing(request, "");

    private static void AskByDrawing(Wire.CheckRequest request, string blocks) =>
        request.Knife = new Wire.Knife
        {
            Drawing = new Wire.KnifeDrawing
            {
                Dxf = ByteString.CopyFromUtf8(
                    LooseDrawing
                        .Of(KnifeCatalogue.Wagtail.ToDrawn())
                        .ToString()
                        .Replace(
                            "0\nSECTION\n2\nENTITIES\n",
                            blocks + "0\nSECTION\n2\nENTITIES\n0\nINSERT\n8\n0\n2\nA\n10\n0\n20\n0\n",
                            StringComparison.Ordinal
                        )
                ),
            },
        };

    /// <summary>Thousands of circles, each near its neighbours: far more than a millisecond of work.</summary>
    internal static byte[] SecondsOfWork()
    {
        LooseDrawing drawing = new();
        for (int i = 0; i < 20_000; i++)
        {
            drawing.Add("PLATE", new Circle(new Point(i % 141 * 3, i / 141 * 3), 1));
        }

        return drawing.ToBytes();
    }

    private static Wire.FaceOverride Face() =>
        new()
        {
            Near = new Wire.Point { XMm = 3, YMm = 3 },
            BladeFace = Wire.BladeFace.OpenFlat,
        };
}
