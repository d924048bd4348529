using System.Globalization;
using Flushback.Service.Limits;
using Grpc.Core;
using Grpc.Core.Interceptors;

namespace Flushback.Service.Errors;

/// <summary>
/// Turns what nobody foresaw into INTERNAL with a plain sentence for the caller and the whole story in the log.
/// </summary>
public sealed partial class LastResortInterceptor(ServiceLimits limits, ILogger<LastResortInterceptor> logger)
    : Interceptor
{
    /// <summary>What a caller is told of a fault of ours.</summary>
    public const string Sentence =
        "The service failed on this request; the fault is ours, not the drawing's, and its log says more.";

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
        catch (RpcException)
        {
            throw;
        }
        catch (OperationCanceledException) when (context.CancellationToken.IsCancellationRequested)
        {
            // A caller whose deadline passed has been told so by gRPC already; this is for one who hung up.
            throw new RpcException(new Status(StatusCode.Cancelled, "The caller cancelled the request."));
        }
        catch (OperationCanceledException)
        {
            // Nobody outside cancelled, so the clock did.
            throw RequestErrors.OverLimit(TimeOver());
        }
        catch (Exception exception)
        {
            LogFault(exception, context.Method);
            throw new RpcException(new Status(StatusCode.Internal, Sentence));
        }
    }

    // What a call that answers by a stream returns at its end.
    private static async Task<bool> Unanswered(Task call)
    {
        await call;
        return true;
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
