using Grpc.AspNetCore.HealthChecks;
using Microsoft.Extensions.Diagnostics.HealthChecks;
using Microsoft.Extensions.Options;

namespace Flushback.Service.Hosting;

/// <summary>Health by gRPC's own protocol: under the name of each service, as <c>ready</c>, and as <c>live</c>.</summary>
internal static class HealthSetup
{
    /// <summary>The process answers; it is to be restarted when it does not.</summary>
    public const string Live = "live";

    /// <summary>Calls are welcome; a balancer sends none otherwise.</summary>
    public const string Ready = "ready";

    /// <summary>Adds health and an end in order.</summary>
    public static void AddHealth(this IHostApplicationBuilder builder)
    {
        builder
            .Services.AddOptions<DrainOptions>()
            .Bind(
                builder.Configuration.GetSection(DrainOptions.Section),
                binder => binder.ErrorOnUnknownConfiguration = true
            )
            .ValidateDataAnnotations()
            .ValidateOnStart();
        builder.Services.AddSingleton<Draining>();
        builder.Services.AddHostedService(provider => provider.GetRequiredService<Draining>());
        builder
            .Services.AddOptions<HostOptions>()
            .Configure<IOptions<DrainOptions>>(
                (host, drain) =>
                    host.ShutdownTimeout = TimeSpan.FromSeconds(drain.Value.NoticeSeconds + drain.Value.FinishSeconds)
            );
        builder
            .Services.AddGrpcHealthChecks(MapNames)
            .AddCheck<Draining>(Ready)
            .AddCheck(Live, () => HealthCheckResult.Healthy());
    }

    private static void MapNames(GrpcHealthChecksOptions health)
    {
        health.Services.Map("", check => check.Name == Ready);
        health.Services.Map(Ready, check => check.Name == Ready);
        health.Services.Map(Live, check => check.Name == Live);
        foreach (string service in ServiceNames.All)
        {
            health.Services.Map(service, check => check.Name == Ready);
        }
    }
}
