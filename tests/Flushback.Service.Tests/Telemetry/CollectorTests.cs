using System.Collections.Concurrent;
using System.Text;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.DependencyInjection;
using Microsoft.Extensions.Logging;
using OpenTelemetry.Metrics;
using OpenTelemetry.Trace;

namespace Flushback.Service.Tests.Telemetry;

/// <summary>What a collector is sent.</summary>
public sealed class CollectorTests
{
    [Fact]
    public async Task A_collector_is_sent_the_spans_of_a_call_and_the_metrics()
    {
        ConcurrentDictionary<string, string> sent = [];
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.Logging.ClearProviders();
        await using WebApplication collector = builder.Build();
        collector.Urls.Add("http://127.0.0.1:0");
        collector.Run(async context =>
        {
            using MemoryStream body = new();
            await context.Request.Body.CopyToAsync(body);
            sent.AddOrUpdate(
                context.Request.Path,
                Encoding.Latin1.GetString(body.ToArray()),
                (_, before) => before + Encoding.Latin1.GetString(body.ToArray())
            );
        });
        await collector.StartAsync();
        RunningService service = await RunningService.StartAsync($"--Telemetry:Collector={collector.Urls.Single()}");

        await service.Checker.CheckAsync(Requests.Outlines());

        // A span is ended after the answer; what is left is sent at the end too, but for no longer than five seconds.
        await service.StopAsync();
        Assert.True(service.Parts.GetRequiredService<TracerProvider>().ForceFlush());
        Assert.True(service.Parts.GetRequiredService<MeterProvider>().ForceFlush());
        await service.DisposeAsync();

        Assert.Contains("flushback.v1.ProfileChecker/Check", sent["/v1/traces"], StringComparison.Ordinal);
        Assert.Contains("wait for a turn", sent["/v1/traces"], StringComparison.Ordinal);
        Assert.Contains("flushback.request.duration", sent["/v1/metrics"], StringComparison.Ordinal);
    }
}
