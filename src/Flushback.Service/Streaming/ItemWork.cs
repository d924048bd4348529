using Flushback.Service.Checks;
using Flushback.Service.Errors;
using Flushback.Service.Limits;
using Flushback.Service.Queueing;
using Flushback.Service.Validation;
using Grpc.Core;

namespace Flushback.Service.Streaming;

/// <summary>Does what one item of a stream asks for; whatever goes wrong becomes the item's answer.</summary>
public sealed class ItemWork(
    KnifeChecker knives,
    PatternChecker patterns,
    Turns turns,
    ServiceLimits limits,
    Faults faults,
    ItemTelemetry telemetry
)
{
    /// <summary>The answer to an item.</summary>
    /// <exception cref="OperationCanceledException">The whole stream is cancelled: nobody waits for an answer.</exception>
    public async Task<Wire.CheckManyResponse> AnswerAsync(Wire.CheckManyRequest item, ServerCallContext context)
    {
        using ItemWatch watch = telemetry.Start(item);
        Wire.CheckManyResponse answer = new() { ItemId = item.ItemId };
        try
        {
            ItemRules.Check(item, limits);
            using Turn turn = await turns.TakeForItemAsync(context);
            answer.Check =
                item.WorkCase == Wire.CheckManyRequest.WorkOneofCase.Pattern
                    ? patterns.Check(item.Pattern, context.CancellationToken)
                    : knives.Check(item.Check, context.CancellationToken);
        }
        catch (Exception fault) when (!context.CancellationToken.IsCancellationRequested)
        {
            answer.Error = faults.Tell(fault, context.Method, context.CancellationToken).ToItemError();
        }

        watch.Tell(answer);
        return answer;
    }
}
