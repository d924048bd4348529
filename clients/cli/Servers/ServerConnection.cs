using Grpc.Core;
using Grpc.Net.Client;

namespace Flushback.Cli.Servers;

/// <summary>A way to a service.</summary>
internal abstract class ServerConnection : IAsyncDisposable
{
    private protected ServerConnection(GrpcChannel channel) => Channel = channel;

    /// <summary>The channel to call on.</summary>
    public GrpcChannel Channel { get; }

    /// <summary>A way to a service that runs elsewhere.</summary>
    /// <param name="address">Where it listens.</param>
    /// <param name="access">What it asks of its callers.</param>
    public static ServerConnection To(Uri address, RemoteAccess access) =>
        new RemoteServer(Open(address, access.ToHandler()), access);

    /// <summary>What goes with a call.</summary>
    /// <param name="deadline">When the answer has to be there.</param>
    /// <param name="cancellation">Gives up.</param>
    public virtual CallOptions ToCall(DateTime deadline, CancellationToken cancellation) =>
        new(deadline: deadline, cancellationToken: cancellation);

    /// <inheritdoc/>
    public virtual ValueTask DisposeAsync()
    {
        Channel.Dispose();
        return ValueTask.CompletedTask;
    }

    private protected static GrpcChannel Open(Uri address, SocketsHttpHandler handler) =>
        GrpcChannel.ForAddress(address, ChannelSettings.With(handler));

    private sealed class RemoteServer(GrpcChannel channel, RemoteAccess access) : ServerConnection(channel)
    {
        public override CallOptions ToCall(DateTime deadline, CancellationToken cancellation) =>
            base.ToCall(deadline, cancellation).WithHeaders(access.Headers);
    }
}
