using Grpc.Core;
using Grpc.Core.Interceptors;

namespace Flushback.Service.Queueing;

/// <summary>Lets every call of ours wait for its turn; health and reflection answer at once.</summary>
/// <remarks>A call that takes or gives a stream takes no turn as a whole: it takes one an item, from <see cref="Turns"/>.</remarks>
public sealed class QueueInterceptor(Turns turns) : Interceptor
{
    /// <inheritdoc/>
    public override async Task<TResponse> UnaryServerHandler<TRequest, TResponse>(
        TRequest request,
        ServerCallContext context,
        UnaryServerMethod<TRequest, TResponse> continuation
    )
    {
        if (!IsOurs(context))
        {
            return await continuation(request, context);
        }

        using Turn turn = await turns.TakeAsync(context);
        return await continuation(request, context);
    }

    private static bool IsOurs(ServerCallContext context) =>
        context.Method.StartsWith("/flushback.", StringComparison.Ordinal);
}
