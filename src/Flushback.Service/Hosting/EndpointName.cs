namespace Flushback.Service.Hosting;

/// <summary>Tells the addresses the service listens on apart.</summary>
internal sealed record EndpointName(string Name)
{
    /// <summary>The address that serves metrics and nothing else.</summary>
    public const string Metrics = "Metrics";

    /// <summary>The address for web pages without TLS, which speak HTTP/1.1.</summary>
    public const string Web = "Web";

    /// <summary>The name of the address a request came in at; null for one of the others.</summary>
    public static string? Of(HttpContext context) => context.Features.Get<EndpointName>()?.Name;
}
