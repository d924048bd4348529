using Grpc.Core;
using Microsoft.Net.Http.Headers;

namespace Flushback.Service.Security;

/// <summary>Lets only those pass who show a token; health answers everybody, as probes have none.</summary>
internal sealed class TokenCheck(RequestDelegate next, TokenFile tokens)
{
    /// <summary>What a caller without a token is told.</summary>
    public const string Sentence =
        "The request has no token, or a wrong one; send the one you were given in the header 'authorization: Bearer TOKEN'.";

    private const string Scheme = "Bearer ";
    private const string HealthPath = "/grpc.health.v1.Health/";
    private const string GrpcMediaType = "application/grpc";

    /// <summary>Passes a request on, or refuses it before its message is read.</summary>
    public Task InvokeAsync(HttpContext context)
    {
        string authorization = context.Request.Headers.Authorization.ToString();
        bool mayPass =
            context.Request.Path.StartsWithSegments(HealthPath.TrimEnd('/'), StringComparison.Ordinal)
            || (
                authorization.StartsWith(Scheme, StringComparison.OrdinalIgnoreCase)
                && tokens.Holds(authorization[Scheme.Length..].Trim())
            );
        return mayPass ? next(context) : Refuse(context);
    }

    private static Task Refuse(HttpContext context)
    {
        HttpResponse response = context.Response;
        bool isGrpc =
            context.Request.ContentType?.StartsWith(GrpcMediaType, StringComparison.OrdinalIgnoreCase) == true;
        if (isGrpc)
        {
            response.ContentType = GrpcMediaType;
            response.Headers.GrpcStatus = ((int)StatusCode.Unauthenticated).ToString(
                System.Globalization.CultureInfo.InvariantCulture
            );
            response.Headers.GrpcMessage = Sentence;
        }
        else
        {
            response.StatusCode = StatusCodes.Status401Unauthorized;
            response.Headers[HeaderNames.WWWAuthenticate] = Scheme.Trim();
        }

        return Task.CompletedTask;
    }
}
