using System.Net.Sockets;
using Flushback.Service;
using Grpc.Net.Client;
using Microsoft.AspNetCore.Builder;
using Microsoft.Extensions.Logging;

namespace Flushback.Cli.Servers;

/// <summary>A service inside this process, on a socket in a folder that only this user can open.</summary>
internal sealed class OwnServer : ServerConnection
{
    private readonly WebApplication _host;
    private readonly DirectoryInfo _folder;

    private OwnServer(WebApplication host, DirectoryInfo folder, GrpcChannel channel)
        : base(channel)
    {
        _host = host;
        _folder = folder;
    }

    /// <summary>Starts the service and opens a way to it.</summary>
    /// <param name="isVerbose">True to print what it logs to standard error.</param>
    /// <param name="cancellation">Gives up.</param>
    public static async Task<OwnServer> StartAsync(bool isVerbose, CancellationToken cancellation)
    {
        DirectoryInfo folder = PrivateFolder.Create();
        string socket = Path.Combine(folder.FullName, "service");
        try
        {
            WebApplication host = FlushbackHost.BuildOnSocket(socket, logging: isVerbose ? LogToStandardError : null);
            await host.StartAsync(cancellation);
            return new OwnServer(host, folder, OpenSocket(socket));
        }
        catch
        {
            folder.Delete(recursive: true);
            throw;
        }
    }

    /// <inheritdoc/>
    public override async ValueTask DisposeAsync()
    {
        await base.DisposeAsync();
        await _host.DisposeAsync();
        _folder.Delete(recursive: true);
    }

    private static GrpcChannel OpenSocket(string socket)
    {
        UnixDomainSocketEndPoint end = new(socket);
        SocketsHttpHandler handler = new()
        {
            ConnectCallback = async (_, cancellation) =>
            {
                Socket client = new(AddressFamily.Unix, SocketType.Stream, ProtocolType.Unspecified);
                try
                {
                    await client.ConnectAsync(end, cancellation);
                    return new NetworkStream(client, ownsSocket: true);
                }
                catch
                {
                    client.Dispose();
                    throw;
                }
            },
        };

        // The name is never looked up: the callback above decides where the connection goes.
        return Open(new Uri("http://localhost"), handler);
    }

    private static void LogToStandardError(ILoggingBuilder logging) =>
        logging.AddConsole(console => console.LogToStandardErrorThreshold = LogLevel.Trace);
}
