using Grpc.AspNetCore.Server;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Options;

namespace Flushback.Service.Limits;

/// <summary>Reads the limits and tells gRPC and HTTP of those that they hold to.</summary>
internal static class LimitsSetup
{
    // What HTTP may carry beside the message: the frame of gRPC, and as much again as text for pages.
    private const int FramingBytes = 64 * 1024;

    /// <summary>Adds the limits, checked when the service starts.</summary>
    public static void AddLimits(this WebApplicationBuilder builder)
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
        services
            .AddOptions<GrpcServiceOptions>()
            .Configure<ServiceLimits>((grpc, limits) => grpc.MaxReceiveMessageSize = limits.MessageBytes);
        services
            .AddOptions<KestrelServerOptions>()
            .Configure<ServiceLimits>(
                (kestrel, limits) =>
                    kestrel.Limits.MaxRequestBodySize = Math.Max(
                        kestrel.Limits.MaxRequestBodySize ?? 0,
                        (2L * limits.MessageBytes) + FramingBytes
                    )
            );
    }
}
