using Grpc.Net.Client;

namespace Flushback.Cli.Servers;

/// <summary>A way to a service.</summary>
internal abstract class ServerConnection : IAsyncDisposable
{
    // A page, a curve of thousands of samples and a drawing together go beyond gRPC's own 4 MB.
    private const int LargestAnswerBytes = 256 * 1024 * 1024;

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
        GrpcChannel.ForAddress(
            address,
            new GrpcChannelOptions { HttpHandler = handler, MaxReceiveMessageSize = LargestAnswerBytes }
        );

    private sealed class RemoteServer(GrpcChannel channel) : ServerConnection(channel);
}
