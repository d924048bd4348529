using Flushback.Service.Drawings;
using Flushback.Service.Errors;
using Flushback.Service.Limits;
using Flushback.Service.Validation;
using Grpc.AspNetCore.Server;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using Microsoft.Extensions.Options;

namespace Flushback.Service;

/// <summary>Builds the service as a host that any program can start: on the network, or inside itself on a socket.</summary>
public static class FlushbackHost
{
    /// <summary>Where the service listens when nothing else is configured: this machine only, HTTP/2 without TLS.</summary>
    public const string DefaultAddress = "http://127.0.0.1:5210";

    /// <summary>A host that is configured from appsettings.json, the environment and the command line, in that order.</summary>
    /// <param name="args">
    /// Command line in the form of .NET configuration, such as <c>--urls http://127.0.0.1:6000</c>,
    /// <c>--Kestrel:Endpoints:Grpc:Url=https://...</c> or <c>--Limits:Vertices=5000</c>.
    /// </param>
    public static WebApplication Build(string[] args)
    {
        WebApplicationBuilder builder = WebApplication.CreateBuilder(
            new WebApplicationOptions { Args = args, ContentRootPath = AppContext.BaseDirectory }
        );
        builder.WebHost.ConfigureKestrel(SpeakHttp2Only);
        if (!NamesAnEndpoint(builder.Configuration))
        {
            builder.WebHost.UseUrls(DefaultAddress);
        }

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
        {
            SpeakHttp2Only(kestrel);
            kestrel.ListenUnixSocket(socketPath);
        });
        builder.Services.AddRouting();
        logging?.Invoke(builder.Logging);
        return Finish(builder);
    }

    private static WebApplication Finish(WebApplicationBuilder builder)
    {
        IServiceCollection services = builder.Services;
        services
            .AddOptions<ServiceLimits>()
            .Bind(
                builder.Configuration.GetSection(ServiceLimits.Section),
                binder => binder.ErrorOnUnknownConfiguration = true
            )
            .ValidateDataAnnotations()
            .ValidateOnStart();
        services.AddSingleton(provider => provider.GetRequiredService<IOptions<ServiceLimits>>().Value);
        services.AddSingleton<RequestValidator>();
        services.AddSingleton<KnifeReader>();
        services.AddSingleton<InspectionReader>();
        services.AddGrpc(grpc => grpc.Interceptors.Add<LastResortInterceptor>());
        services
            .AddOptions<GrpcServiceOptions>()
            .Configure<ServiceLimits>((grpc, limits) => grpc.MaxReceiveMessageSize = limits.MessageBytes);
        services
            .AddGrpcHealthChecks(health =>
            {
                health.Services.Map(Wire.ProfileChecker.Descriptor.FullName, _ => true);
                health.Services.Map(Wire.ProfileInspector.Descriptor.FullName, _ => true);
                health.Services.Map(Wire.BenchSimulator.Descriptor.FullName, _ => true);
            })
            .AddCheck("host", () => HealthCheckResult.Healthy());
        services.AddGrpcReflection();

        WebApplication app = builder.Build();
        app.UseMiddleware<OversizedMessageDetails>();
        app.MapGrpcService<ProfileCheckerService>();
        app.MapGrpcService<ProfileInspectorService>();
        app.MapGrpcService<BenchSimulatorService>();
        app.MapGrpcHealthChecksService();
        app.MapGrpcReflectionService();
        return app;
    }

    // gRPC needs HTTP/2, and without TLS there is nothing to negotiate it with.
    private static void SpeakHttp2Only(KestrelServerOptions kestrel) =>
        kestrel.ConfigureEndpointDefaults(endpoint => endpoint.Protocols = HttpProtocols.Http2);

    private static bool NamesAnEndpoint(ConfigurationManager configuration) =>
        configuration[WebHostDefaults.ServerUrlsKey] is not null
        || configuration.GetSection("Kestrel:Endpoints").Exists();
}
