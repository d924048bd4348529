using System.Net;
using Flushback.Cli.Tests.Running;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Logging;

namespace Flushback.Cli.Tests;

/// <summary>What the client asks for again, against a service of the test that is unavailable as often as it is told.</summary>
public sealed class TryAgainTests : IDisposable
{
    private readonly Workbench _bench = new();
    private int _calls;

    [Fact]
    public async Task An_unavailable_service_is_asked_again_until_it_answers()
    {
        await using WebApplication host = await StartAsync(refusals: 3, pushback: null);

        Ending ending = await RunAsync(host);

        // An empty answer is one: a report without findings.
        Assert.Equal((0, ""), (ending.ExitCode, ending.Error));
        Assert.Equal(4, _calls);
    }

    [Fact]
    public async Task After_five_tries_it_gives_up()
    {
        await using WebApplication host = await StartAsync(refusals: 9, pushback: null);

        Ending ending = await RunAsync(host);

        Assert.Equal(3, ending.ExitCode);
        Assert.Equal(5, _calls);
    }

    [Fact]
    public async Task It_waits_as_long_as_the_service_says()
    {
        await using WebApplication host = await StartAsync(refusals: 1, pushback: 3000);
        long from = TimeProvider.System.GetTimestamp();

        Ending ending = await RunAsync(host);

        // No sooner, however long the rest takes; by itself it would wait a tenth of a second at most.
        Assert.Equal((0, 2), (ending.ExitCode, _calls));
        Assert.True(TimeProvider.System.GetElapsedTime(from) >= TimeSpan.FromSeconds(3));
    }

    [Fact]
    public async Task A_service_that_says_never_again_is_not_asked_again()
    {
        await using WebApplication host = await StartAsync(refusals: 9, pushback: -1);

        Ending ending = await RunAsync(host);

        Assert.Equal((3, 1), (ending.ExitCode, _calls));
    }

    [Fact]
    public async Task The_deadline_counts_all_tries_together()
    {
        await using WebApplication host = await StartAsync(refusals: 9, pushback: 600_000);

        // A machine so slow that the first try comes too late is given more time for it.
        Ending ending;
        int seconds = 2;
        do
        {
            ending = await RunAsync(host, "--deadline", $"{seconds}s");
            seconds *= 4;
        } while (_calls == 0 && seconds < 600);

        Assert.Equal((3, 1), (ending.ExitCode, _calls));
        Assert.Contains("--deadline", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    public void Dispose() => _bench.Dispose();

    private Task<Ending> RunAsync(WebApplication host, params string[] more) =>
        Client.RunAsync(["check", _bench.PutClean(), "--quiet", "--server", host.Urls.Single(), .. more]);

    private async Task<WebApplication> StartAsync(int refusals, int? pushback)
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.ConfigureKestrel(kestrel =>
            kestrel.Listen(IPAddress.Loopback, 0, endpoint => endpoint.Protocols = HttpProtocols.Http2)
        );
        builder.Logging.ClearProviders();
        WebApplication host = builder.Build();
        host.Run(context => AnswerAsync(context, Interlocked.Increment(ref _calls) <= refusals, pushback));
        await host.StartAsync();
        return host;
    }

    private static async Task AnswerAsync(HttpContext context, bool refuses, int? pushback)
    {
        HttpResponse response = context.Response;
        response.ContentType = "application/grpc";
        if (refuses)
        {
            // Without a body the status is among the headers, which is what may be tried again.
            response.Headers["grpc-status"] = "14";
            if (pushback is not null)
            {
                response.Headers["grpc-retry-pushback-ms"] = $"{pushback}";
            }

            return;
        }

        await response.Body.WriteAsync(new Wire.CheckResponse { Report = new Wire.CheckReport() }.ToFrame());
        response.AppendTrailer("grpc-status", "0");
    }
}

/// <summary>Messages as gRPC puts them into a body.</summary>
internal static class Frames
{
    /// <summary>Not compressed, its length, its bytes.</summary>
    public static byte[] ToFrame(this Google.Protobuf.IMessage message)
    {
        byte[] bytes = Google.Protobuf.MessageExtensions.ToByteArray(message);
        return [0, .. BitConverter.GetBytes(IPAddress.HostToNetworkOrder(bytes.Length)), .. bytes];
    }
}
