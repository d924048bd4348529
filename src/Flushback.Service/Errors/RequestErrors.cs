using System.Globalization;
using Google.Protobuf.WellKnownTypes;
using Google.Rpc;
using Grpc.Core;
using Status = Google.Rpc.Status;

namespace Flushback.Service.Errors;

/// <summary>Errors a caller can act on, as gRPC status with typed details.</summary>
public static class RequestErrors
{
    /// <summary>The domain of every <see cref="ErrorInfo"/> of this service.</summary>
    public const string Domain = "flushback.v1";

    /// <summary>Reason of the last violation when there are more than a status can carry.</summary>
    public const string MoreViolations = "MORE_VIOLATIONS";

    // Common clients take no more than 8 kB of metadata, and base64 adds a third: what is above goes into a count.
    private const int LargestStatusBytes = 5000;

    /// <summary>Input that is no knife: every violation, in the order found.</summary>
    /// <param name="violations">At least one.</param>
    public static RpcException InvalidArgument(Violations violations)
    {
        BadRequest details = new();
        int bytes = 0;
        foreach (Violation violation in violations.Kept)
        {
            BadRequest.Types.FieldViolation field = new()
            {
                Field = violation.Field,
                Reason = violation.Reason,
                Description = violation.Sentence,
            };
            bytes += field.CalculateSize();
            if (bytes > LargestStatusBytes && details.FieldViolations.Count > 0)
            {
                break;
            }

            details.FieldViolations.Add(field);
        }

        int left = violations.Count - details.FieldViolations.Count;
        if (left > 0)
        {
            details.FieldViolations.Add(More(left));
        }

        return new Status
        {
            Code = (int)Code.InvalidArgument,
            Message = Headline(violations),
            Details = { Any.Pack(details) },
        }.ToRpcException();
    }

    /// <summary>More asked for than the service allows.</summary>
    /// <param name="limit">The limit, its setting and the value asked for.</param>
    public static RpcException OverLimit(LimitExceeded limit) => Exhausted(limit).ToRpcException();

    /// <summary>The status of <see cref="OverLimit"/>.</summary>
    internal static Status Exhausted(LimitExceeded limit)
    {
        ErrorInfo info = new()
        {
            Domain = Domain,
            Reason = limit.Reason,
            Metadata = { ["limit"] = limit.Name },
        };
        if (limit.Allowed is { } allowed)
        {
            info.Metadata["allowed"] = allowed.ToString(CultureInfo.InvariantCulture);
        }

        if (limit.Value is { } value)
        {
            info.Metadata["value"] = value.ToString(CultureInfo.InvariantCulture);
        }

        return new Status
        {
            Code = (int)Code.ResourceExhausted,
            Message = limit.Sentence,
            Details = { Any.Pack(info) },
        };
    }

    private static string Headline(Violations violations) =>
        violations.Count == 1
            ? violations.Kept[0].Sentence
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{violations.Count} things are wrong with the request; the first: {violations.Kept[0].Sentence}"
            );

    private static BadRequest.Types.FieldViolation More(int count) =>
        new()
        {
            Reason = MoreViolations,
            Description = string.Create(
                CultureInfo.InvariantCulture,
                $"{count} more like these are not listed; mend these first."
            ),
        };
}
