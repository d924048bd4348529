using Flushback.Mechanism.Knives;
using Flushback.Service.Errors;
using Flushback.Service.Limits;
using Flushback.Service.Mapping;
using Flushback.Service.Validation;

namespace Flushback.Service.Drawings;

/// <summary>Takes the knife out of a request, from its outlines or from its drawing.</summary>
public sealed class KnifeReader(ServiceLimits limits)
{
    /// <summary>Reads the knife, or refuses it with everything that is wrong with it.</summary>
    /// <param name="request">The knife of a request that was validated.</param>
    /// <param name="cancellation">Stops the reading.</param>
    /// <exception cref="Grpc.Core.RpcException">INVALID_ARGUMENT for input that is no knife, RESOURCE_EXHAUSTED over a limit.</exception>
    internal KnifeSource Read(Wire.Knife request, CancellationToken cancellation)
    {
        Violations violations = new();
        KnifeSource? source = request.Outlines is { } outlines
            ? FromOutlines(outlines, violations)
            : new DrawingReader(limits).Read(request.Drawing, violations, cancellation);
        if (source is not null)
        {
            new OutlineRules(limits, violations).Check(source, cancellation);
        }

        violations.ThrowIfAny();
        return source! with { Drawn = source.Drawn.As(request) };
    }

    private static KnifeSource FromOutlines(Wire.KnifeOutlines outlines, Violations violations)
    {
        DrawnKnife drawn = outlines.ToDrawnKnife();
        KnifeSize.Check(drawn, violations);
        return new KnifeSource(drawn, Wire.LengthUnit.Millimetre, [], null);
    }
}
