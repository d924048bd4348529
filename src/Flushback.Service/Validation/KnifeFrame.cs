using System.Collections.Immutable;
using Flushback.Mechanism.Knives;
using Flushback.Service.Drawings;
using Flushback.Service.Errors;

namespace Flushback.Service.Validation;

/// <summary>Places a knife, or refuses it in the words of the contract.</summary>
internal static class KnifeFrame
{
    /// <summary>The knife in its frame.</summary>
    /// <exception cref="Grpc.Core.RpcException">INVALID_ARGUMENT with every reason why it is no knife.</exception>
    public static Placement Place(KnifeSource source, CancellationToken cancellation = default)
    {
        (Placement? placement, ImmutableArray<KnifeProblem> problems) = KnifePlacement.Place(
            source.Drawn,
            cancellation
        );
        ThrowIfAny(problems, source);
        return placement!;
    }

    /// <summary>Refuses a request with every problem of its knife, if there is any.</summary>
    /// <exception cref="Grpc.Core.RpcException">INVALID_ARGUMENT with every problem.</exception>
    public static void ThrowIfAny(ImmutableArray<KnifeProblem> problems, KnifeSource source)
    {
        Violations violations = new();
        foreach (KnifeProblem problem in problems)
        {
            violations.Add(
                SubjectFields.PathOf(problem.Subject, source, problem.VertexIndex),
                problem.Reason,
                problem.Sentence
            );
        }

        violations.ThrowIfAny();
    }
}
