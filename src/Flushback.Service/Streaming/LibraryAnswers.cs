using Flushback.Service.Errors;
using Flushback.Service.Hosting;
using Flushback.Service.Limits;
using Grpc.Core;

namespace Flushback.Service.Streaming;

/// <summary>Answers a library item by item, each as soon as it is ready, with so many in hand and no more.</summary>
/// <remarks>
/// Nothing is read from the connection while <see cref="ServiceLimits.StreamItems"/> are in hand, and an item is in hand
/// until its answer is written. So whoever sends without reading, or faster than the service computes, fills the window
/// of HTTP/2 and is held up there.
/// </remarks>
public sealed class LibraryAnswers(ItemWork work, Draining draining, ServiceLimits limits, Faults faults)
{
    /// <summary>Header with <see cref="BuildName.Text"/>, sent before the first item is read.</summary>
    public const string BuildHeader = "flushback-build";

    private const string DrainedSentence =
        "The service is being stopped and takes in nothing more; send what is not answered again.";

    /// <summary>Answers every item until the caller has sent the last, hangs up, or the service is told to stop.</summary>
    /// <exception cref="RpcException">The stream was cut short; what was taken in before is answered.</exception>
    public async Task AnswerAsync(
        IAsyncStreamReader<Wire.CheckManyRequest> items,
        IServerStreamWriter<Wire.CheckManyResponse> answers,
        ServerCallContext context
    )
    {
        await context.WriteResponseHeadersAsync(new Metadata { { BuildHeader, BuildName.Text } });
        using SemaphoreSlim pen = new(1);
        IncomingItems incoming = new(items, limits, faults, context);
        using CancellationTokenSource reading = CancellationTokenSource.CreateLinkedTokenSource(
            context.CancellationToken,
            draining.Finishing
        );

        // No token: what was taken in is answered, however the reading ends.
        await Parallel.ForEachAsync(
            incoming.ReadAsync(reading.Token),
            new ParallelOptions { MaxDegreeOfParallelism = limits.StreamItems },
            async (item, _) => await WriteAsync(await work.AnswerAsync(item, context), answers, pen, context)
        );

        context.CancellationToken.ThrowIfCancellationRequested();
        if (incoming.Refused is { } refused)
        {
            throw refused;
        }

        if (!incoming.HasEnded)
        {
            throw new RpcException(new Status(StatusCode.Unavailable, DrainedSentence));
        }
    }

    private static async Task WriteAsync(
        Wire.CheckManyResponse answer,
        IServerStreamWriter<Wire.CheckManyResponse> answers,
        SemaphoreSlim pen,
        ServerCallContext context
    )
    {
        await pen.WaitAsync(context.CancellationToken);
        try
        {
            await answers.WriteAsync(answer, context.CancellationToken);
        }
        finally
        {
            pen.Release();
        }
    }
}
