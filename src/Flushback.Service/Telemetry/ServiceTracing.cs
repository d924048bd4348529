using System.Diagnostics;

namespace Flushback.Service.Telemetry;

/// <summary>The service's own spans, inside the one that the framework opens for every request.</summary>
public static class ServiceTracing
{
    /// <summary>Name of the source of spans and of the meter.</summary>
    public const string Name = "Flushback.Service";

    /// <summary>The source.</summary>
    public static ActivitySource Source { get; } = new(Name);
}
