using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using System.Net;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf;
using Grpc.Core;
using Grpc.Net.Client;
using Grpc.Net.Client.Web;
using Microsoft.Extensions.DependencyInjection;

namespace Flushback.Service.Tests.Web;

/// <summary>Calls as a page in a browser makes them: gRPC-Web over HTTP/1.1.</summary>
public sealed class WebTests : IAsyncLifetime
{
    private const string Origin = "https://bench.example";
    private RunningService _service = null!;

    public async Task InitializeAsync() =>
        _service = await RunningService.StartAsync("--Web:Url=http://127.0.0.1:0", $"--Web:Origins:0={Origin}");

    public Task DisposeAsync() => _service.DisposeAsync();

    [Theory]
    [InlineData(GrpcWebMode.GrpcWeb)]
    [InlineData(GrpcWebMode.GrpcWebText)]
    public async Task A_page_gets_the_same_report_as_any_client(GrpcWebMode mode)
    {
        Wire.CheckRequest request = Requests.Outlines(Wire.ArtifactKind.Json);

        Wire.CheckResponse byPage = await Page(mode).CheckAsync(request);

        Assert.Equal((await _service.Checker.CheckAsync(request)).ToByteArray(), byPage.ToByteArray());
    }

    [Fact]
    public async Task A_call_by_a_page_is_counted_with_its_status()
    {
        IMeterFactory ofTheService = _service.Parts.GetRequiredService<IMeterFactory>();
        ConcurrentBag<string?> counted = [];
        using MeterListener listener = new()
        {
            InstrumentPublished = (instrument, listening) =>
            {
                if (instrument.Meter.Scope == ofTheService && instrument.Name == "flushback.request.duration")
                {
                    listening.EnableMeasurementEvents(instrument);
                }
            },
        };
        listener.SetMeasurementEventCallback<double>((_, _, tags, _) => counted.Add((string?)tags[1].Value));
        listener.Start();

        await Page(GrpcWebMode.GrpcWeb).CheckAsync(Requests.Outlines());

        await Eventually.IsTrueAsync(() => !counted.IsEmpty);
        Assert.Equal(["OK"], counted);
    }

    [Fact]
    public async Task A_page_gets_the_details_of_a_refusal()
    {
        RpcException refused = await Assert.ThrowsAsync<RpcException>(async () =>
            await Page(GrpcWebMode.GrpcWeb).CheckAsync(new Wire.CheckRequest())
        );

        Assert.Equal(StatusCode.InvalidArgument, refused.StatusCode);
        Assert.Equal("knife", refused.GetRpcStatus()!.GetDetail<Google.Rpc.BadRequest>()!.FieldViolations[0].Field);
    }

    [Theory]
    [InlineData(Origin, true)]
    [InlineData("https://elsewhere.example", false)]
    [InlineData("null", false)]
    public async Task A_browser_is_told_to_let_only_the_origins_of_the_configuration_call(string origin, bool mayCall)
    {
        using HttpResponseMessage answer = await AskAsync(_service, origin);

        Assert.Equal(mayCall, answer.Headers.Contains("Access-Control-Allow-Origin"));
    }

    [Fact]
    public async Task By_default_no_other_origin_may_call()
    {
        RunningService closed = await RunningService.StartAsync("--Web:Url=http://127.0.0.1:0");

        using HttpResponseMessage answer = await AskAsync(closed, Origin);

        Assert.False(answer.Headers.Contains("Access-Control-Allow-Origin"));
        await closed.DisposeAsync();
    }

    [Fact]
    public async Task A_client_without_http_2_and_without_grpc_web_is_refused()
    {
        using HttpClient client = new();
        using ByteArrayContent content = new(new byte[5]);
        content.Headers.ContentType = new("application/grpc");

        using HttpResponseMessage answer = await client.PostAsync(
            new Uri(_service.OtherAddress, "/flushback.v1.ProfileChecker/Check"),
            content
        );

        Assert.Equal(HttpStatusCode.UpgradeRequired, answer.StatusCode);
    }

    private Wire.ProfileChecker.ProfileCheckerClient Page(GrpcWebMode mode) =>
        new(
            GrpcChannel.ForAddress(
                _service.OtherAddress,
                new GrpcChannelOptions
                {
                    HttpHandler = new GrpcWebHandler(mode, new HttpClientHandler()),
                    HttpVersion = HttpVersion.Version11,
                    HttpVersionPolicy = HttpVersionPolicy.RequestVersionExact,
                    MaxReceiveMessageSize = null,
                }
            )
        );

    private static async Task<HttpResponseMessage> AskAsync(RunningService service, string origin)
    {
        using HttpClient client = new();
        using HttpRequestMessage preflight = new(
            HttpMethod.Options,
            new Uri(service.OtherAddress, "/flushback.v1.ProfileChecker/Check")
        );
        preflight.Headers.Add("Origin", origin);
        preflight.Headers.Add("Access-Control-Request-Method", "POST");
        preflight.Headers.Add("Access-Control-Request-Headers", "content-type,x-grpc-web");
        return await client.SendAsync(preflight);
    }
}
