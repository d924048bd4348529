using Flushback.Cli.Regression.Baselines;
using Flushback.Cli.Regression.Items;
using Flushback.Contract.V1;
using Google.Rpc;

namespace Flushback.Cli.Regression.Running;

/// <summary>Makes of the service's answer what is kept of it.</summary>
internal sealed class AnswerReading(LibrarySettings settings)
{
    /// <summary>A snapshot, or the sentences of the refusal.</summary>
    public Answered Read(LibraryItem item, CheckManyResponse answer) =>
        answer.Error is { } error
            ? new Answered(null, [.. SentencesOf(error)])
            : new Answered(SnapshotOf.Answer(answer.Check, settings.WithinOf(item)), []);

    private static IEnumerable<string> SentencesOf(ItemError error)
    {
        BadRequest? bad = error
            .Details.FirstOrDefault(detail => detail.Is(BadRequest.Descriptor))
            ?.Unpack<BadRequest>();
        return bad is null
            ? [error.Message]
            : bad.FieldViolations.Select(violation => violation.Description).Distinct();
    }
}
