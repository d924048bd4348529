using System.Net;
using System.Text.RegularExpressions;
using Flushback.Deployment.Tests.Running;
using Flushback.Service.Limits;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf;
using Google.Rpc;
using Grpc.Core;
using Grpc.Net.Client;
using Grpc.Net.Client.Web;

namespace Flushback.Deployment.Tests.Proxy;

/// <summary>Two replicas behind the nginx of the compose file.</summary>
[Collection(Published.Name)]
public sealed class ProxyTests(PublishedService published) : IAsyncLifetime
{
    private Replica _first = null!;
    private Replica _second = null!;
    private Nginx _nginx = null!;

    public async Task InitializeAsync()
    {
        _first = await Replica.StartAsync(published);
        _second = await Replica.StartAsync(published);
        _nginx = await Nginx.StartAsync([_first.Address, _second.Address]);
    }

    public async Task DisposeAsync()
    {
        await _nginx.DisposeAsync();
        await _first.DisposeAsync();
        await _second.DisposeAsync();
    }

    [Fact]
    public async Task A_check_by_the_proxy_has_the_same_answer_as_by_any_replica()
    {
        Wire.CheckRequest request = Requests.Outlines(Wire.ArtifactKind.Html, Wire.ArtifactKind.Json);
        using GrpcChannel channel = _nginx.Open();

        Wire.CheckResponse byProxy = await Checker(channel).CheckAsync(request);

        Assert.Equal((await _first.Checker.CheckAsync(request)).ToByteArray(), byProxy.ToByteArray());
        Assert.Equal((await _second.Checker.CheckAsync(request)).ToByteArray(), byProxy.ToByteArray());
    }

    [Fact]
    public async Task A_drawing_of_four_megabytes_passes()
    {
        using GrpcChannel channel = _nginx.Open();

        Wire.CheckResponse response = await Checker(channel).CheckAsync(Checks.FourMegabytes());

        Assert.Equal(3, response.Report.Stops.Count);
    }

    [Fact]
    public async Task A_drawing_over_the_services_limit_is_refused_by_the_service_with_its_details()
    {
        using GrpcChannel channel = _nginx.Open();

        RpcException refused = await Assert.ThrowsAsync<RpcException>(async () =>
            await Checker(channel).CheckAsync(Requests.Drawing(new byte[6 * 1024 * 1024]))
        );

        Assert.Equal(StatusCode.ResourceExhausted, refused.StatusCode);
        Assert.Equal("MessageBytes", refused.GetRpcStatus()!.GetDetail<ErrorInfo>()!.Metadata["limit"]);
    }

    [Fact]
    public async Task A_page_calls_through_the_proxy_by_http_1_1()
    {
        using GrpcChannel channel = GrpcChannel.ForAddress(
            _nginx.Address,
            new GrpcChannelOptions
            {
                HttpHandler = new GrpcWebHandler(GrpcWebMode.GrpcWeb, _nginx.Handler()),
                HttpVersion = HttpVersion.Version11,
                HttpVersionPolicy = HttpVersionPolicy.RequestVersionExact,
            }
        );

        Assert.Equal(3, (await Checker(channel).CheckAsync(Requests.Outlines())).Report.Stops.Count);
    }

    [Fact]
    public async Task A_replica_that_answers_too_late_is_unavailable_and_not_a_broken_stream()
    {
        await using Nginx impatient = await Nginx.StartAsync(
            [_first.Address, _second.Address],
            new Dictionary<string, string> { ["grpc_read_timeout 75s"] = "grpc_read_timeout 50ms" }
        );
        using GrpcChannel channel = GrpcChannel.ForAddress(
            impatient.Address,
            new GrpcChannelOptions { HttpHandler = impatient.Handler() }
        );

        RpcException late = await Assert.ThrowsAsync<RpcException>(async () =>
            await Checker(channel).CheckAsync(Requests.Outlines(FinelyDrawn.AtTheLimit()))
        );

        Assert.Equal(StatusCode.Unavailable, late.StatusCode);
        Assert.Equal("No replica answers; try again.", late.Status.Detail);
    }

    [Fact]
    public void The_proxy_waits_longer_than_the_service_lets_a_request_wait_and_take()
    {
        string configuration = File.ReadAllText(Repository.PathOf("docker/nginx.conf"));
        int seconds = int.Parse(
            Regex.Match(configuration, @"grpc_read_timeout (\d+)s;").Groups[1].Value,
            System.Globalization.CultureInfo.InvariantCulture
        );
        int megabytes = int.Parse(
            Regex.Match(configuration, @"client_max_body_size (\d+)m;").Groups[1].Value,
            System.Globalization.CultureInfo.InvariantCulture
        );

        ServiceLimits limits = new();
        Assert.True(seconds > 2 * limits.Seconds);
        Assert.True(megabytes * 1024L * 1024 > limits.MessageBytes);
    }

    [Fact]
    public async Task Calls_go_to_both_replicas()
    {
        using KeptPort one = new();
        using KeptPort other = new();
        string[] metrics = [$"http://127.0.0.1:{one.Number}", $"http://127.0.0.1:{other.Number}"];
        await using Replica first = await Replica.StartAsync(published, $"--Telemetry:MetricsUrl={metrics[0]}");
        await using Replica second = await Replica.StartAsync(published, $"--Telemetry:MetricsUrl={metrics[1]}");
        await using Nginx nginx = await Nginx.StartAsync([first.Address, second.Address]);
        using GrpcChannel channel = nginx.Open();

        await Task.WhenAll(
            Enumerable.Range(0, 40).Select(async _ => await Checker(channel).CheckAsync(Requests.Outlines()))
        );

        using HttpClient client = new();
        foreach (string address in metrics)
        {
            // A call is counted when its connection is done with it, which may be after the caller has his answer.
            await Eventually.IsTrueAsync(async () =>
                Regex.IsMatch(
                    await client.GetStringAsync(new Uri($"{address}/metrics")),
                    "flushback_request_duration_seconds_count.*OK.* [1-9]"
                )
            );
        }
    }

    private static Wire.ProfileChecker.ProfileCheckerClient Checker(GrpcChannel channel) => new(channel);
}
