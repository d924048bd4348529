using System.Globalization;
using Flushback.Service.Limits;
using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using Grpc.Core;
using Status = Google.Rpc.Status;

namespace Flushback.Service.Errors;

/// <summary>The service has more to do than it takes in: come again.</summary>
internal static class Busy
{
    /// <summary>Reason in the <see cref="ErrorInfo"/>.</summary>
    public const string Reason = "BUSY";

    // A client's retry policy knows this trailer of gRPC, and a program of its own the RetryInfo: both say the same.
    private const string PushbackTrailer = "grpc-retry-pushback-ms";

    /// <summary>UNAVAILABLE, with the time after which to try again.</summary>
    /// <param name="context">The call that is refused.</param>
    /// <param name="limits">Gives the limit that was reached.</param>
    /// <param name="retryAfter">When another try is likely to find room.</param>
    public static RpcException Tell(ServerCallContext context, ServiceLimits limits, TimeSpan retryAfter)
    {
        context.ResponseTrailers.Add(
            PushbackTrailer,
            ((long)retryAfter.TotalMilliseconds).ToString(CultureInfo.InvariantCulture)
        );
        return Status(limits, retryAfter).ToRpcException();
    }

    /// <summary>The status of <see cref="Tell"/>, for one item of a stream that goes on.</summary>
    public static Status Status(ServiceLimits limits, TimeSpan retryAfter)
    {
        ErrorInfo info = new()
        {
            Domain = RequestErrors.Domain,
            Reason = Reason,
            Metadata =
            {
                ["limit"] = nameof(ServiceLimits.ItemsInFlight),
                ["allowed"] = limits.ItemsInFlight.ToString(CultureInfo.InvariantCulture),
            },
        };
        return new Status
        {
            Code = (int)Code.Unavailable,
            Message = string.Create(
                CultureInfo.InvariantCulture,
                $"The service is busy with the {limits.ItemsInFlight:N0} requests it takes in; try again in {retryAfter.TotalSeconds:0.0##} s."
            ),
            Details = { Any.Pack(new RetryInfo { RetryDelay = Duration.FromTimeSpan(retryAfter) }), Any.Pack(info) },
        };
    }
}
