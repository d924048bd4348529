using Grpc.Core;

namespace Flushback.Service.Streaming;

/// <summary>The status of a call as the error of an item.</summary>
internal static class ItemErrors
{
    /// <summary>Code, sentence and details, which an answer of a single call would carry in its trailers.</summary>
    public static Wire.ItemError ToItemError(this RpcException refused) =>
        new()
        {
            Code = (int)refused.StatusCode,
            Message = refused.Status.Detail,
            Details = { refused.GetRpcStatus()?.Details ?? [] },
        };
}
