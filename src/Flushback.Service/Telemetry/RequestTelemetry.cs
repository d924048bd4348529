using System.Diagnostics;
using System.Globalization;
using Flushback.Service.Errors;
using Google.Protobuf;
using Grpc.AspNetCore.Server;
using Grpc.Core;
using Microsoft.AspNetCore.Http.Features;

namespace Flushback.Service.Telemetry;

/// <summary>Measures every call and logs the refused ones, whoever refused them: gRPC, the service or a check in between.</summary>
public sealed partial class RequestTelemetry(
    RequestDelegate next,
    ServiceMetrics metrics,
    ILogger<RequestTelemetry> logger
)
{
    /// <summary>Follows a call to its end.</summary>
    public async Task InvokeAsync(HttpContext context)
    {
        long from = Stopwatch.GetTimestamp();
        try
        {
            await next(context);
        }
        finally
        {
            // Only names of the contract become labels: what a caller makes up would fill the memory with series.
            if (context.GetEndpoint()?.Metadata.GetMetadata<GrpcMethodMetadata>()?.Method.FullName is { } method)
            {
                Tell(context, method.TrimStart('/'), Stopwatch.GetElapsedTime(from));
            }
        }
    }

    private void Tell(HttpContext context, string method, TimeSpan duration)
    {
        StatusCode status = StatusOf(context);
        metrics.Answered(method, status.ToString(), duration);
        if (LimitOf(context) is { } limit)
        {
            metrics.OverLimit(limit);
        }

        if (status == StatusCode.OK)
        {
            LogAnswered(method, duration.TotalMilliseconds);
        }
        else
        {
            LogRefused(method, status, duration.TotalMilliseconds, context.Connection.RemoteIpAddress);
        }
    }

    // A status stands in the headers when nothing else was sent, else in the trailers; no status is a broken stream.
    private static StatusCode StatusOf(HttpContext context) =>
        int.TryParse(Sent(context, "grpc-status"), NumberStyles.None, CultureInfo.InvariantCulture, out int code)
            ? (StatusCode)code
            : StatusCode.Cancelled;

    private static string? LimitOf(HttpContext context)
    {
        if (Sent(context, OversizedMessageDetails.DetailsHeader) is not { Length: > 0 } encoded)
        {
            return null;
        }

        // gRPC leaves the padding away.
        string padded = encoded.PadRight((encoded.Length + 3) / 4 * 4, '=');
        Google.Rpc.Status status = Google.Rpc.Status.Parser.ParseFrom(ByteString.FromBase64(padded));
        return
            status.GetDetail<Google.Rpc.ErrorInfo>() is { } info && info.Metadata.TryGetValue("limit", out string? name)
            ? name
            : null;
    }

    private static string? Sent(HttpContext context, string name)
    {
        IHeaderDictionary? trailers = context.Features.Get<IHttpResponseTrailersFeature>()?.Trailers;
        return trailers?.TryGetValue(name, out var trailer) == true ? trailer : context.Response.Headers[name];
    }

    [LoggerMessage(Level = LogLevel.Debug, Message = "{Method} answered after {Milliseconds:0.0} ms.")]
    private partial void LogAnswered(string method, double milliseconds);

    [LoggerMessage(
        Level = LogLevel.Information,
        Message = "{Method} refused with {Status} after {Milliseconds:0.0} ms, called from {Address}."
    )]
    private partial void LogRefused(
        string method,
        StatusCode status,
        double milliseconds,
        System.Net.IPAddress? address
    );
}
