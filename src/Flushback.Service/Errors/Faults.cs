using System.Globalization;
using Flushback.Service.Limits;
using Grpc.Core;

namespace Flushback.Service.Errors;

/// <summary>What a caller is told of whatever ended his request; the whole story of a fault of ours goes to the log.</summary>
public sealed partial class Faults(ServiceLimits limits, ILogger<Faults> logger)
{
    /// <summary>What a caller is told of a fault of ours.</summary>
    public const string Sentence =
        "The service failed on this request; the fault is ours, not the drawing's, and its log says more.";

    /// <summary>The status of a request that was ended by something.</summary>
    /// <param name="fault">What ended it; a status stays as it is.</param>
    /// <param name="method">Full name of the method, for the log.</param>
    /// <param name="caller">Cancelled when the caller hung up or his deadline passed.</param>
    public RpcException Tell(Exception fault, string method, CancellationToken caller)
    {
        switch (fault)
        {
            case RpcException told:
                return told;
            case OperationCanceledException when caller.IsCancellationRequested:
                // A caller whose deadline passed has been told so by gRPC already; this is for one who hung up.
                return new RpcException(new Status(StatusCode.Cancelled, "The caller cancelled the request."));
            case OperationCanceledException:
                // Nobody outside cancelled, so the clock did.
                return RequestErrors.OverLimit(TimeOver());
            default:
                LogFault(fault, method);
                return new RpcException(new Status(StatusCode.Internal, Sentence));
        }
    }

    private LimitExceeded TimeOver() =>
        new(
            "TOO_LONG",
            nameof(ServiceLimits.Seconds),
            limits.Seconds,
            null,
            string.Create(
                CultureInfo.InvariantCulture,
                $"The request took longer than the {limits.Seconds} seconds allowed; draw curves as arcs instead of many short lines, or ask for less: a larger step, fewer layers."
            )
        );

    [LoggerMessage(Level = LogLevel.Error, Message = "{Method} failed.")]
    private partial void LogFault(Exception exception, string method);
}
