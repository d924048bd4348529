using Flushback.Service.Limits;
using Google.Protobuf;
using Grpc.Core;

namespace Flushback.Service.Errors;

/// <summary>
/// Adds our details to a message that gRPC itself refuses for its size, before any code of ours sees it.
/// </summary>
public sealed class OversizedMessageDetails(RequestDelegate next, ServiceLimits limits)
{
    /// <summary>Header or trailer in which gRPC carries the details of a status.</summary>
    internal const string DetailsHeader = "grpc-status-details-bin";

    /// <summary>Looks at the status when the call is over; what gRPC refused by itself has not left by then.</summary>
    public async Task InvokeAsync(HttpContext context)
    {
        await next(context);
        if (!context.Response.HasStarted)
        {
            AddDetails(context.Response.Headers, context.Request.ContentLength);
        }
    }

    private void AddDetails(IHeaderDictionary headers, long? bytes)
    {
        bool exhausted = headers.GrpcStatus == ((int)StatusCode.ResourceExhausted).ToString(Invariant);
        if (!exhausted || headers.ContainsKey(DetailsHeader))
        {
            return;
        }

        Google.Rpc.Status status = RequestErrors.Exhausted(MessageTooLarge(limits, bytes));
        headers.GrpcMessage = status.Message;
        headers[DetailsHeader] = Convert.ToBase64String(status.ToByteArray());
    }

    /// <summary>What a message over its limit goes over.</summary>
    internal static LimitExceeded MessageTooLarge(ServiceLimits limits, long? bytes) =>
        new(
            "MESSAGE_TOO_LARGE",
            nameof(ServiceLimits.MessageBytes),
            limits.MessageBytes,
            bytes,
            string.Create(
                Invariant,
                $"The request is larger than the {limits.MessageBytes:N0} bytes allowed; leave out of the drawing what is not to be read."
            )
        );

    private static System.Globalization.CultureInfo Invariant => System.Globalization.CultureInfo.InvariantCulture;
}
