using Flushback.Contract.V1;

namespace Flushback.Cli.Regression.Baselines;

/// <summary>Takes from an answer the outlines that are kept of it, those of a second blade in the frame of the first.</summary>
internal static class OutlinesOf
{
    private const int Decimals = 4;
    private const int BulgeDecimals = 6;

    /// <summary>What is kept of an answer's outlines.</summary>
    /// <param name="answer">An answer with outlines.</param>
    /// <param name="withinMm">How far another may lie off, in millimetres.</param>
    public static KeptOutlines Answer(CheckResponse answer, double withinMm)
    {
        KeptPart[] parts = [.. Parts(answer.Outlines)];
        KeptPin[] pins = [.. Pins(answer.Outlines)];
        if (answer.Second is not { } second)
        {
            return new KeptOutlines(withinMm, parts, pins);
        }

        return new KeptOutlines(
            withinMm,
            [
                .. parts.Select(part => part with { Name = OfFirst(part.Name) }),
                .. Parts(second.Outlines)
                    .Where(part => !IsCommon(part.Name, second))
                    .Select(part => InFirst(part, second) with { Name = $"second {part.Name}" }),
            ],
            [
                .. pins.Select(pin => pin with { Name = OfFirst(pin.Name) }),
                .. Pins(second.Outlines)
                    .Where(pin => !IsCommon(pin.Name, second))
                    .Select(pin => InFirst(pin, second) with { Name = $"second {pin.Name}" }),
            ]
        );

        string OfFirst(string name) => IsCommon(name, second) ? name : $"first {name}";
    }

    // What both blades have as one piece: a shared spring lies a little turned under the second, but it is the same.
    private static bool IsCommon(string name, CheckedSecondBlade second) =>
        name switch
        {
            "handle" => true,
            "spring" => second.Arrangement == Arrangement.SharedSpring,
            "centre pin" => second.Arrangement == Arrangement.SharedSpring || !second.AtOtherEnd,
            "pivot" or "rear pin" => !second.AtOtherEnd,
            _ => false,
        };

    private static KeptPart InFirst(KeptPart part, CheckedSecondBlade second) =>
        second.AtOtherEnd
            ? part with
            {
                Vertices =
                [
                    .. part.Vertices.Select(at => new KeptVertex(
                        Rounded.To(-second.SpanMm - at.X, Decimals),
                        at.Y,
                        Rounded.To(-at.Bulge, BulgeDecimals)
                    )),
                ],
            }
            : part;

    private static KeptPin InFirst(KeptPin pin, CheckedSecondBlade second) =>
        second.AtOtherEnd ? pin with { X = Rounded.To(-second.SpanMm - pin.X, Decimals) } : pin;

    private static IEnumerable<KeptPart> Parts(KnifeOutlines drawn)
    {
        yield return Part("blade", drawn.Blade);
        yield return Part("spring", drawn.Spring);
        if (drawn.Handle is { } handle)
        {
            yield return Part("handle", handle);
        }
    }

    private static IEnumerable<KeptPin> Pins(KnifeOutlines drawn)
    {
        yield return Pin("pivot", drawn.Pivot);
        yield return Pin("centre pin", drawn.CentrePin);
        if (drawn.RearPin is { } rear)
        {
            yield return Pin("rear pin", rear);
        }
    }

    private static KeptPart Part(string name, Outline outline) =>
        new(
            name,
            [
                .. outline.Vertices.Select(vertex => new KeptVertex(
                    Rounded.To(vertex.XMm, Decimals),
                    Rounded.To(vertex.YMm, Decimals),
                    Rounded.To(vertex.Bulge, BulgeDecimals)
                )),
            ]
        );

    private static KeptPin Pin(string name, Circle pin) =>
        new(
            name,
            Rounded.To(pin.Centre.XMm, Decimals),
            Rounded.To(pin.Centre.YMm, Decimals),
            Rounded.To(pin.DiameterMm, Decimals)
        );
}
