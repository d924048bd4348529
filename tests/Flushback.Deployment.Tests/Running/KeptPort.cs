using System.Net;
using System.Net.Sockets;

namespace Flushback.Deployment.Tests.Running;

/// <summary>A port of this machine for whoever the test gives it to, also while nobody listens there.</summary>
/// <remarks>
/// It is bound and never listened on: so the system gives it to nobody else, callers are refused, and whoever names it
/// can listen on it all the same, as .NET and nginx do so with SO_REUSEADDR (socket(7)).
/// </remarks>
internal sealed class KeptPort : IDisposable
{
    private readonly Socket _socket = new(AddressFamily.InterNetwork, SocketType.Stream, ProtocolType.Tcp);

    public KeptPort() => _socket.Bind(new IPEndPoint(IPAddress.Loopback, 0));

    /// <summary>Its number.</summary>
    public int Number => ((IPEndPoint)_socket.LocalEndPoint!).Port;

    /// <inheritdoc/>
    public void Dispose() => _socket.Dispose();
}
