namespace Flushback.Service.Telemetry;

/// <summary>Where measurements and traces go. Bound from the configuration section <see cref="Section"/>.</summary>
public sealed class TelemetryOptions
{
    /// <summary>Name of the configuration section.</summary>
    public const string Section = "Telemetry";

    /// <summary>Address on which metrics are served as Prometheus reads them, such as http://127.0.0.1:5212.</summary>
    /// <value>Default: none. Held to the same rules as any other address.</value>
    public string? MetricsUrl { get; set; }

    /// <summary>Collector that is sent traces and metrics by OTLP over HTTP, such as http://127.0.0.1:4318.</summary>
    /// <value>Default: none.</value>
    public Uri? Collector { get; set; }
}
