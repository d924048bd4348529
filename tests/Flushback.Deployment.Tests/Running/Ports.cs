using System.Net;
using System.Net.Sockets;

namespace Flushback.Deployment.Tests.Running;

/// <summary>Ports of this machine that nobody uses at the moment.</summary>
internal static class Ports
{
    /// <summary>One of them.</summary>
    public static int Free()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
