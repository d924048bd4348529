using Grpc.Core;

namespace Flushback.Service.Queueing;

/// <summary>Tells callers apart, so that they can take turns.</summary>
/// <param name="options">May name the header in which a proxy says whose request it passes on.</param>
public sealed class Callers(QueueOptions options)
{
    /// <summary>A caller's name: what the proxy's header says, else the connection.</summary>
    public string NameOf(ServerCallContext context)
    {
        HttpContext http = context.GetHttpContext();
        return options.CallerHeader is { Length: > 0 } header && http.Request.Headers[header] is [{ Length: > 0 } named]
            ? named
            : http.Connection.Id;
    }
}
