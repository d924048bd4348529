using Flushback.Cli.Regression.Items;
using Flushback.Cli.Servers;
using Flushback.Contract.V1;
using Grpc.Core;

namespace Flushback.Cli.Regression.Running;

/// <summary>Opens streams to a service and sends items over them.</summary>
/// <param name="connection">The way to the service.</param>
/// <param name="requests">Makes the items.</param>
/// <param name="reading">Makes of an answer what is kept.</param>
/// <param name="answers">Takes what is kept.</param>
/// <param name="ahead">How many items are sent and not yet answered, at most.</param>
/// <param name="deadline">When every answer has to be there; null for whenever.</param>
internal sealed class ItemStreams(
    ServerConnection connection,
    ItemRequests requests,
    AnswerReading reading,
    Answers answers,
    int ahead,
    DateTime? deadline
)
{
    // The header in which the service tells its build, see the contract.
    private const string BuildHeader = "flushback-build";

    // Longer than the service may take over an item, waiting included.
    private static readonly TimeSpan _longestSilence = TimeSpan.FromSeconds(90);

    /// <summary>Sends items over one stream until each is answered, or the stream ends.</summary>
    /// <exception cref="RpcException">The stream ended before; what is answered until then is kept.</exception>
    public async Task AnswerAsync(IReadOnlyList<LibraryItem> items, CancellationToken cancellation)
    {
        using CancellationTokenSource silence = CancellationTokenSource.CreateLinkedTokenSource(cancellation);
        silence.CancelAfter(_longestSilence);
        using AsyncDuplexStreamingCall<CheckManyRequest, CheckManyResponse> call =
            new ProfileChecker.ProfileCheckerClient(connection.Channel).CheckMany(
                connection.ToCall(deadline ?? DateTime.MaxValue, silence.Token)
            );
        using OneStream stream = new(items, BuildOf(call), requests, reading, answers, ahead);

        Task sending = stream.SendAsync(call.RequestStream, silence.Token);
        try
        {
            await foreach (CheckManyResponse answer in call.ResponseStream.ReadAllAsync(silence.Token))
            {
                await stream.TakeAsync(answer);
                silence.CancelAfter(_longestSilence);
            }

            if (!stream.IsFinished)
            {
                throw new RpcException(new Status(StatusCode.Unavailable, "The stream ended before the last answer."));
            }

            await sending;
        }
        catch (RpcException refused)
            when (refused.StatusCode is StatusCode.ResourceExhausted or StatusCode.InvalidArgument
                && stream.FirstUnanswered is { } toBlame
            )
        {
            answers.Refuse(toBlame, refused.Status.Detail);
        }
        finally
        {
            await silence.CancelAsync();
            await sending.ContinueWith(
                _ => { },
                CancellationToken.None,
                TaskContinuationOptions.ExecuteSynchronously,
                TaskScheduler.Default
            );
        }
    }

    private static async Task<string> BuildOf(AsyncDuplexStreamingCall<CheckManyRequest, CheckManyResponse> call) =>
        (await call.ResponseHeadersAsync).GetValue(BuildHeader) ?? "";
}
