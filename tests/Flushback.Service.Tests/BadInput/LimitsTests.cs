using Flushback.Geometry;
using Flushback.Service.Limits;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf;
using Grpc.Core;
using Microsoft.Extensions.Options;

namespace Flushback.Service.Tests.BadInput;

public sealed class LimitsTests
{
    /// <summary>The setting, and what makes a request go over it.</summary>
    public static TheoryData<string, string, Action<Wire.CheckRequest>> Over =>
        new()
        {
            { "Vertices", "8", _ => { } },
            { "Samples", "19", request => request.Bench = new Wire.BenchSettings { StepDeg = 1 } },
            { "FaceOverrides", "1", request => request.Knife.FaceOverrides.AddRange([Face(), Face()]) },
            { "MessageBytes", "1024", request => request.Name = new string('a', 1024) },
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

    [Fact]
    public void The_defaults_are_those_of_the_documentation()
    {
        ServiceLimits limits = new();

        Assert.Equal(
            (4 * 1024 * 1024, 100_000, 1e5, 7201, 200, 200, 200, 50, 100, 30.0),
            (
                limits.MessageBytes,
                limits.Vertices,
                limits.CoordinateMm,
                limits.Samples,
                limits.NameLength,
                limits.FaceOverrides,
                limits.CutLayers,
                limits.PinDiameters,
                limits.Passes,
                limits.Seconds
            )
        );
    }

    /// <summary>The finest curve of a blade in thousands of edges: seconds, so that no sluggish clock lets it through.</summary>
    private static void AskForSecondsOfWork(Wire.CheckRequest request)
    {
        const int Pieces = 1000;
        request.Bench = new Wire.BenchSettings { StepDeg = 0.025 };
        Wire.Vertex[] drawn = [.. request.Knife.Outlines.Blade.Vertices];
        request.Knife.Outlines.Blade.Vertices.Clear();
        for (int i = 0; i < drawn.Length; i++)
        {
            Wire.Vertex from = drawn[i];
            Wire.Vertex to = drawn[(i + 1) % drawn.Length];
            int pieces = from.Bulge == 0 ? Pieces : 1;
            for (int k = 0; k < pieces; k++)
            {
                double part = k / (double)pieces;
                request.Knife.Outlines.Blade.Vertices.Add(
                    new Wire.Vertex
                    {
                        XMm = from.XMm + (part * (to.XMm - from.XMm)),
                        YMm = from.YMm + (part * (to.YMm - from.YMm)),
                        Bulge = from.Bulge,
                    }
                );
            }
        }
    }

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
