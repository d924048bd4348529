using System.Diagnostics;
using System.Globalization;
using System.Net;
using System.Net.Sockets;
using Flushback.Cli.Servers;
using Grpc.Core;
using Grpc.Health.V1;
using Grpc.Net.Client;

namespace Flushback.Load;

/// <summary>The service as a process of its own, and what the system says of it.</summary>
internal sealed class ServiceProcess : IAsyncDisposable
{
    private const double BytesPerKilobyte = 1024;

    private readonly Process _process;

    private ServiceProcess(int port)
    {
        Address = new Uri($"http://127.0.0.1:{port}");
        string program = Path.Combine(AppContext.BaseDirectory, "Flushback.Service.dll");
        _process = Process.Start(
            new ProcessStartInfo(
                "dotnet",
                [program, "--urls", Address.GetLeftPart(UriPartial.Authority), "--Logging:LogLevel:Default=Warning"]
            )
        )!;
    }

    /// <summary>Where it listens.</summary>
    public Uri Address { get; }

    /// <summary>Memory of the process that is in use, in megabytes of 1,048,576 bytes.</summary>
    public double MemoryMb =>
        double.Parse(
            File.ReadLines($"/proc/{_process.Id}/status")
                .Single(line => line.StartsWith("VmRSS:", StringComparison.Ordinal))
                .Split(' ', StringSplitOptions.RemoveEmptyEntries)[1],
            CultureInfo.InvariantCulture
        ) / BytesPerKilobyte;

    /// <summary>Files and sockets that it holds open.</summary>
    public int Handles => Directory.EnumerateFileSystemEntries($"/proc/{_process.Id}/fd").Count();

    /// <summary>Starts it and waits until it is ready.</summary>
    public static async Task<ServiceProcess> StartAsync(CancellationToken cancellation)
    {
        ServiceProcess service = new(FreePort());
        using GrpcChannel channel = service.Open();
        Health.HealthClient health = new(channel);
        while (!service._process.HasExited)
        {
            try
            {
                await health.CheckAsync(new HealthCheckRequest { Service = "ready" }, cancellationToken: cancellation);
                return service;
            }
            catch (RpcException)
            {
                await Task.Delay(100, cancellation);
            }
        }

        throw new InvalidOperationException("The service has ended by itself.");
    }

    /// <summary>A channel with a connection of its own.</summary>
    public GrpcChannel Open() => GrpcChannel.ForAddress(Address, ChannelSettings.With(new SocketsHttpHandler()));

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        if (!_process.HasExited)
        {
            _process.Kill();
            await _process.WaitForExitAsync();
        }

        _process.Dispose();
    }

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
