using Microsoft.AspNetCore.Cors.Infrastructure;

namespace Flushback.Service.Web;

/// <summary>Lets pages call by gRPC-Web: any that comes from this very address, others by their origin.</summary>
internal static class WebSetup
{
    // What a page has to read of an answer to know how the call ended.
    private static readonly string[] _told =
    [
        "grpc-status",
        "grpc-message",
        "grpc-status-details-bin",
        "grpc-encoding",
        "grpc-accept-encoding",
    ];

    /// <summary>Adds the origins of the configuration.</summary>
    public static void AddWeb(this IHostApplicationBuilder builder)
    {
        WebOptions options = WebOptions.From(builder.Configuration);
        builder.Services.AddCors(cors => cors.AddDefaultPolicy(policy => Allow(policy, options)));
    }

    /// <summary>Takes calls by gRPC-Web for every service.</summary>
    public static void UseWeb(this WebApplication app)
    {
        app.UseCors();
        app.UseGrpcWeb(new GrpcWebOptions { DefaultEnabled = true });
    }

    private static void Allow(CorsPolicyBuilder policy, WebOptions options) =>
        policy
            .WithOrigins([.. options.Origins])
            .WithMethods(HttpMethods.Post)
            .AllowAnyHeader()
            .WithExposedHeaders(_told);
}
