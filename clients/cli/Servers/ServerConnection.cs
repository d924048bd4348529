using Grpc.Net.Client;

namespace Flushback.Cli.Servers;

/// <summary>A way to a service.</summary>
internal abstract class ServerConnection : IAsyncDisposable
{
    private protected ServerConnection(GrpcChannel channel) => Channel = channel;

    /// <summary>The channel to call on.</summary>
    public GrpcChannel Channel { get; }

    /// <summary>A way to a service that runs elsewhere.</summary>
    public static ServerConnection To(Uri address) => new RemoteServer(Open(address, null));

    /// <inheritdoc/>
    public virtual ValueTask DisposeAsync()
    {
        Channel.Dispose();
        return ValueTask.CompletedTask;
    }

    private protected static GrpcChannel Open(Uri address, SocketsHttpHandler? handler) =>
        GrpcChannel.ForAddress(address, ChannelSettings.With(handler));

    private sealed class RemoteServer(GrpcChannel channel) : ServerConnection(channel);
}
