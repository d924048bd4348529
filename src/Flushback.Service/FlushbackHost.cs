using Flushback.Service.Checks;
using Flushback.Service.Drawings;
using Flushback.Service.Errors;
using Flushback.Service.Hosting;
using Flushback.Service.Limits;
using Flushback.Service.Queueing;
using Flushback.Service.Security;
using Flushback.Service.Streaming;
using Flushback.Service.Telemetry;
using Flushback.Service.Validation;
using Flushback.Service.Web;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Flushback.Service;

/// <summary>Builds the service as a host that any program can start: on the network, or inside itself on a socket.</summary>
public static class FlushbackHost
{
    /// <summary>Where the service listens when nothing else is configured: this machine only, HTTP/2 without TLS.</summary>
    public const string DefaultAddress = "http://127.0.0.1:5210";

    /// <summary>Where it then listens for pages: this machine only, gRPC-Web by HTTP/1.1 without TLS.</summary>
    public const string DefaultWebAddress = "http://127.0.0.1:5211";

    /// <summary>A host that is configured from appsettings.json, the environment and the command line, in that order.</summary>
    /// <param name="args">
    /// Command line in the form of .NET configuration, such as <c>--urls http://127.0.0.1:6000</c>,
    /// <c>--Kestrel:Endpoints:Grpc:Url=https://...</c> or <c>--Limits:Vertices=5000</c>, and <c>--insecure</c>.
    /// </param>
    /// <exception cref="RefusedStartException">What is configured is not safe, or names a file that cannot be used.</exception>
    public static WebApplication Build(string[] args)
    {
        WebApplicationBuilder builder = WebApplication.CreateBuilder(
            new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory }
        );

        // Not by the options above: what is said there of addresses cannot be gathered any more.
        builder.Configuration.AddCommandLine(SecuritySetup.WithSwitches(args));
        SecurityOptions security = SecurityOptions.From(builder.Configuration);
        Addresses.Settle(builder, security);
        builder.AddSecurity(security);
        builder.AddExporters();
        return Finish(builder);
    }

    /// <summary>
    /// A host that listens on a unix domain socket and reads no configuration but <paramref name="args"/>, so that
    /// neither the folder nor the environment it is started in changes what it answers.
    /// </summary>
    /// <param name="socketPath">Path of the socket to create; whoever may open it may call the service.</param>
    /// <param name="args">Command line in the form of .NET configuration, such as <c>--Limits:Vertices=5000</c>.</param>
    /// <param name="logging">Where log entries go; null for nowhere.</param>
    public static WebApplication BuildOnSocket(
        string socketPath,
        string[]? args = null,
        Action<ILoggingBuilder>? logging = null
    )
    {
        WebApplicationBuilder builder = WebApplication.CreateEmptyBuilder(
            new WebApplicationOptions { ContentRootPath = AppContext.BaseDirectory }
        );
        builder.Configuration.AddCommandLine(args ?? []);
        builder.WebHost.UseKestrelCore();
        builder.WebHost.ConfigureKestrel(kestrel =>
            kestrel.ListenUnixSocket(socketPath, endpoint => endpoint.Protocols = HttpProtocols.Http2)
        );
        builder.Services.AddRouting();
        logging?.Invoke(builder.Logging);
        return Finish(builder);
    }

    private static WebApplication Finish(WebApplicationBuilder builder)
    {
        builder.AddLimits();
        builder.AddMeasuring();
        builder.AddQueueing();
        builder.AddHealth();
        builder.AddStreaming();
        builder.AddWeb();
        IServiceCollection services = builder.Services;
        services.AddSingleton<RequestValidator>();
        services.AddSingleton<KnifeReader>();
        services.AddSingleton<KnifeChecker>();
        services.AddSingleton<PatternChecker>();
        services.AddSingleton<InspectionReader>();
        services.AddSingleton<Faults>();
        services.AddGrpc(grpc =>
        {
            grpc.Interceptors.Add<LastResortInterceptor>();
            grpc.Interceptors.Add<QueueInterceptor>();
            grpc.Interceptors.Add<FindingsInterceptor>();
        });
        services.AddGrpcReflection();

        WebApplication app = builder.Build();
        app.UseMetricsEndpoint();
        app.UseWeb();
        app.UseMeasuring();
        app.UseTokens();
        app.UseMiddleware<UnreadableMessage>();
        app.UseMiddleware<OversizedMessageDetails>();
        app.MapGrpcService<ProfileCheckerService>();
        app.MapGrpcService<ProfileInspectorService>();
        app.MapGrpcService<BenchSimulatorService>();
        app.MapGrpcService<ProfileExporterService>();
        app.MapGrpcService<ToleranceStudyService>();
        app.MapGrpcHealthChecksService();
        app.MapGrpcReflectionService();
        return app;
    }
}
