using System.Runtime.CompilerServices;
using Flushback.Service.Errors;
using Flushback.Service.Limits;
using Grpc.Core;

namespace Flushback.Service.Streaming;

/// <summary>The items of a stream as they come, and how their coming ended.</summary>
internal sealed class IncomingItems(
    IAsyncStreamReader<Wire.CheckManyRequest> items,
    ServiceLimits limits,
    Faults faults,
    ServerCallContext context
)
{
    /// <summary>True when the caller has sent the last.</summary>
    public bool HasEnded { get; private set; }

    /// <summary>Why what came could not be read; null when everything could.</summary>
    public RpcException? Refused { get; private set; }

    /// <summary>The items until there are no more, one cannot be read, or reading is cancelled.</summary>
    public async IAsyncEnumerable<Wire.CheckManyRequest> ReadAsync(
        [EnumeratorCancellation] CancellationToken cancellation
    )
    {
        while (await HasNextAsync(cancellation))
        {
            yield return items.Current;
        }
    }

    private async Task<bool> HasNextAsync(CancellationToken cancellation)
    {
        try
        {
            bool hasNext = await items.MoveNext(cancellation);
            HasEnded = !hasNext;
            return hasNext;
        }
        catch (Exception) when (cancellation.IsCancellationRequested)
        {
            return false;
        }
        catch (RpcException tooLarge) when (tooLarge.StatusCode == StatusCode.ResourceExhausted)
        {
            Refused = RequestErrors.OverLimit(OversizedMessageDetails.MessageTooLarge(limits, null));
            return false;
        }
        catch (Exception unreadable) when (unreadable is RpcException or Google.Protobuf.InvalidProtocolBufferException)
        {
            Refused = UnreadableMessage.Told().ToRpcException();
            return false;
        }
        catch (Exception fault)
        {
            Refused = faults.Tell(fault, context.Method, context.CancellationToken);
            return false;
        }
    }
}
