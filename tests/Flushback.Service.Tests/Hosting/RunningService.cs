using Grpc.Net.Client;
using Microsoft.AspNetCore.Builder;

namespace Flushback.Service.Tests.Hosting;

/// <summary>The service itself, on a port of this machine that the system picks.</summary>
public sealed class RunningService : IAsyncLifetime
{
    private WebApplication? _host;
    private GrpcChannel? _channel;

    /// <summary>A channel to it.</summary>
    public GrpcChannel Channel => _channel!;

    /// <summary>Where it listens.</summary>
    public Uri Address => new(_host!.Urls.First());

    /// <summary>Where it listens for pages or for readers of metrics, when started with an address for them.</summary>
    public Uri OtherAddress => new(_host!.Urls.Last());

    /// <summary>Everything it is made of.</summary>
    public IServiceProvider Parts => _host!.Services;

    /// <summary>A client of the checker.</summary>
    internal Wire.ProfileChecker.ProfileCheckerClient Checker => new(Channel);

    /// <summary>A client of the inspector.</summary>
    internal Wire.ProfileInspector.ProfileInspectorClient Inspector => new(Channel);

    /// <summary>A client of the simulator.</summary>
    internal Wire.BenchSimulator.BenchSimulatorClient Simulator => new(Channel);

    /// <summary>A client of the exporter.</summary>
    internal Wire.ProfileExporter.ProfileExporterClient Exporter => new(Channel);

    /// <summary>A client of the tolerance study.</summary>
    internal Wire.ToleranceStudy.ToleranceStudyClient Study => new(Channel);

    /// <summary>Starts a service of its own, with settings on its command line.</summary>
    /// <remarks>A request has all the time that a busy machine may take, unless a test says otherwise.</remarks>
    public static async Task<RunningService> StartAsync(params string[] args)
    {
        RunningService service = new();
        service._host = FlushbackHost.Build([
            "--urls",
            "http://127.0.0.1:0",
            "--Logging:LogLevel:Default=None",
            "--Limits:Seconds=600",
            .. args,
        ]);
        await service._host.StartAsync();
        service._channel = GrpcChannel.ForAddress(
            service._host.Urls.First(),
            new GrpcChannelOptions { MaxReceiveMessageSize = null }
        );
        return service;
    }

    /// <summary>Tells it to stop and waits until it has.</summary>
    public Task StopAsync() => _host!.StopAsync();

    /// <inheritdoc/>
    public async Task InitializeAsync()
    {
        RunningService started = await StartAsync();
        (_host, _channel) = (started._host, started._channel);
    }

    /// <inheritdoc/>
    public async Task DisposeAsync()
    {
        _channel?.Dispose();
        if (_host is { } host)
        {
            await host.StopAsync();
            await host.DisposeAsync();
        }
    }
}
