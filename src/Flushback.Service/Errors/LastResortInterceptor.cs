using Grpc.Core;
using Grpc.Core.Interceptors;

namespace Flushback.Service.Errors;

/// <summary>
/// Turns what nobody foresaw into INTERNAL with a plain sentence for the caller and the whole story in the log.
/// </summary>
public sealed class LastResortInterceptor(Faults faults) : Interceptor
{
    /// <inheritdoc/>
    public override Task<TResponse> UnaryServerHandler<TRequest, TResponse>(
        TRequest request,
        ServerCallContext context,
        UnaryServerMethod<TRequest, TResponse> continuation
    ) => GuardAsync(context, () => continuation(request, context));

    /// <inheritdoc/>
    public override Task<TResponse> ClientStreamingServerHandler<TRequest, TResponse>(
        IAsyncStreamReader<TRequest> requestStream,
        ServerCallContext context,
        ClientStreamingServerMethod<TRequest, TResponse> continuation
    ) => GuardAsync(context, () => continuation(requestStream, context));

    /// <inheritdoc/>
    public override Task ServerStreamingServerHandler<TRequest, TResponse>(
        TRequest request,
        IServerStreamWriter<TResponse> responseStream,
        ServerCallContext context,
        ServerStreamingServerMethod<TRequest, TResponse> continuation
    ) => GuardAsync(context, () => Unanswered(continuation(request, responseStream, context)));

    /// <inheritdoc/>
    public override Task DuplexStreamingServerHandler<TRequest, TResponse>(
        IAsyncStreamReader<TRequest> requestStream,
        IServerStreamWriter<TResponse> responseStream,
        ServerCallContext context,
        DuplexStreamingServerMethod<TRequest, TResponse> continuation
    ) => GuardAsync(context, () => Unanswered(continuation(requestStream, responseStream, context)));

    private async Task<TResult> GuardAsync<TResult>(ServerCallContext context, Func<Task<TResult>> call)
    {
        try
        {
            return await call();
        }
        catch (Exception fault) when (fault is not RpcException)
        {
            throw faults.Tell(fault, context.Method, context.CancellationToken);
        }
    }

    // What a call that answers by a stream returns at its end.
    private static async Task<bool> Unanswered(Task call)
    {
        await call;
        return true;
    }
}
