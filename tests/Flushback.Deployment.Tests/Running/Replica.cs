using Flushback.Cli.Servers;
using Flushback.Service.Tests.Hosting;
using Grpc.Core;
using Grpc.Health.V1;
using Grpc.Net.Client;

namespace Flushback.Deployment.Tests.Running;

/// <summary>A published service that runs on a port of this machine.</summary>
internal sealed class Replica : IAsyncDisposable
{
    private readonly KeptPort _port;

    private Replica(StartedProgram program, KeptPort port)
    {
        _port = port;
        Program = program;
        Address = new Uri($"http://127.0.0.1:{port.Number}");
        Channel = GrpcChannel.ForAddress(Address, ChannelSettings.With(null));
    }

    /// <summary>The process.</summary>
    public StartedProgram Program { get; }

    /// <summary>Where it listens.</summary>
    public Uri Address { get; }

    /// <summary>A channel to it that tries again.</summary>
    public GrpcChannel Channel { get; }

    /// <summary>A client of its checker.</summary>
    public Wire.ProfileChecker.ProfileCheckerClient Checker => new(Channel);

    /// <summary>Starts one and waits until it is ready.</summary>
    public static Task<Replica> StartAsync(PublishedService published, params string[] args) =>
        StartAsync(published, new KeptPort(), args);

    /// <summary>Ends this one, and starts another in its place.</summary>
    public async Task<Replica> ReplaceAsync(PublishedService published)
    {
        Channel.Dispose();
        await Program.DisposeAsync();
        return await StartAsync(published, _port);
    }

    /// <summary>Waits until one that was started is ready.</summary>
    public static async Task<Replica> OfAsync(StartedProgram program, KeptPort port)
    {
        Replica replica = new(program, port);
        await Eventually.IsTrueAsync(async () =>
        {
            if (program.HasEnded)
            {
                Assert.Fail($"The service has ended with {await program.EndAsync()}: {program.Printed}");
            }

            return await replica.HealthAsync("ready") == HealthCheckResponse.Types.ServingStatus.Serving;
        });
        return replica;
    }

    /// <summary>What it says of its health; null when it does not answer.</summary>
    public async Task<HealthCheckResponse.Types.ServingStatus?> HealthAsync(string service)
    {
        // By a connection of its own that tries nothing again: it asks how things are now.
        using GrpcChannel channel = GrpcChannel.ForAddress(Address);
        try
        {
            HealthCheckResponse health = await new Health.HealthClient(channel).CheckAsync(
                new HealthCheckRequest { Service = service },
                deadline: TimeProvider.System.GetUtcNow().UtcDateTime.AddMinutes(5)
            );
            return health.Status;
        }
        catch (RpcException)
        {
            return null;
        }
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        Channel.Dispose();
        await Program.DisposeAsync();
        _port.Dispose();
    }

    private static Task<Replica> StartAsync(PublishedService published, KeptPort port, params string[] args) =>
        OfAsync(StartedProgram.Start(published.Program, ["--urls", $"http://127.0.0.1:{port.Number}", .. args]), port);
}
