using System.Diagnostics.Metrics;
using Flushback.Service.Hosting;
using OpenTelemetry.Exporter;
using OpenTelemetry.Metrics;
using OpenTelemetry.Resources;
using OpenTelemetry.Trace;

namespace Flushback.Service.Telemetry;

/// <summary>Measures the calls, and sends or serves the measurements.</summary>
internal static class TelemetrySetup
{
    private const string MetricsPath = "/metrics";

    // From a queue's fraction of a millisecond to the longest request; seconds.
    private static readonly double[] _durationBounds =
    [
        0.001,
        0.0025,
        0.005,
        0.01,
        0.025,
        0.05,
        0.1,
        0.25,
        0.5,
        1,
        2.5,
        5,
        10,
        30,
    ];

    /// <summary>Adds the instruments; without an exporter they cost next to nothing.</summary>
    public static void AddMeasuring(this IHostApplicationBuilder builder)
    {
        builder.Services.AddMetrics();
        builder.Services.AddSingleton<ServiceMetrics>();
    }

    /// <summary>Adds what sends or serves the measurements, where the configuration asks for it.</summary>
    public static void AddExporters(this WebApplicationBuilder builder)
    {
        TelemetryOptions options = Options(builder.Configuration);
        if (options is { MetricsUrl: null, Collector: null })
        {
            return;
        }

        builder
            .Services.AddOpenTelemetry()
            .ConfigureResource(resource => resource.AddService("flushback"))
            .WithMetrics(metrics => Collect(metrics, options))
            .WithTracing(traces => Collect(traces, options));
    }

    /// <summary>Follows every call; inside of what translates calls of pages, which have their status elsewhere.</summary>
    public static void UseMeasuring(this WebApplication app) => app.UseMiddleware<RequestTelemetry>();

    /// <summary>Serves the metrics on their own address and nothing else there, where the configuration asks for it.</summary>
    public static void UseMetricsEndpoint(this WebApplication app)
    {
        if (Options(app.Configuration).MetricsUrl is null)
        {
            return;
        }

        app.UseWhen(
            context => EndpointName.Of(context) == EndpointName.Metrics,
            metrics =>
            {
                metrics.UseOpenTelemetryPrometheusScrapingEndpoint(MetricsPath);
                metrics.Run(context =>
                {
                    context.Response.StatusCode = StatusCodes.Status404NotFound;
                    return Task.CompletedTask;
                });
            }
        );
    }

    /// <summary>The section of the configuration.</summary>
    public static TelemetryOptions Options(IConfiguration configuration)
    {
        TelemetryOptions options = new();
        configuration
            .GetSection(TelemetryOptions.Section)
            .Bind(options, binder => binder.ErrorOnUnknownConfiguration = true);
        return options;
    }

    private static void Collect(MeterProviderBuilder metrics, TelemetryOptions options)
    {
        metrics
            .AddMeter(ServiceTracing.Name, "System.Runtime", "Microsoft.AspNetCore.Server.Kestrel")
            .AddView(instrument =>
                instrument.Meter.Name == ServiceTracing.Name && instrument is Histogram<double>
                    ? new ExplicitBucketHistogramConfiguration { Boundaries = _durationBounds }
                    : null
            );
        if (options.MetricsUrl is not null)
        {
            metrics.AddPrometheusExporter();
        }

        if (options.Collector is { } collector)
        {
            metrics.AddOtlpExporter(otlp => SendTo(otlp, collector, "v1/metrics"));
        }
    }

    private static void Collect(TracerProviderBuilder traces, TelemetryOptions options)
    {
        if (options.Collector is { } collector)
        {
            traces
                .AddSource(ServiceTracing.Name)
                .AddAspNetCoreInstrumentation()
                .AddOtlpExporter(otlp => SendTo(otlp, collector, "v1/traces"));
        }
    }

    private static void SendTo(OtlpExporterOptions otlp, Uri collector, string path)
    {
        otlp.Protocol = OtlpExportProtocol.HttpProtobuf;
        otlp.Endpoint = new Uri(collector, path);
    }
}
