using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Mechanism.Knives;

/// <summary>Checks that pins and parts belong together before anything is computed from them.</summary>
internal static class PartCheck
{
    /// <summary>Everything wrong with the parts, in the drawing's coordinates; empty when they fit.</summary>
    public static ImmutableArray<KnifeProblem> Check(DrawnKnife drawn)
    {
        ImmutableArray<KnifeProblem>.Builder problems = ImmutableArray.CreateBuilder<KnifeProblem>();
        PinInside(problems, KnifeSubject.Pivot, "pivot", drawn.Pivot, "blade", drawn.Blade);
        PinInside(problems, KnifeSubject.CentrePin, "centre pin", drawn.CentrePin, "spring", drawn.Spring);
        if (drawn.RearPin is { } rear)
        {
            PinInside(problems, KnifeSubject.RearPin, "rear pin", rear, "spring", drawn.Spring);
        }

        if (drawn.Spring.Contains(drawn.Pivot.Centre))
        {
            problems.Add(
                new KnifeProblem(
                    "PIVOT_INSIDE_SPRING",
                    KnifeSubject.Pivot,
                    FormattableString.Invariant(
                        $"The pivot at ({drawn.Pivot.Centre.X:0.###}, {drawn.Pivot.Centre.Y:0.###}) mm lies inside the spring; the spring has to pass over the tang, clear of the pivot."
                    ),
                    drawn.Pivot.Centre
                )
            );
        }

        return problems.ToImmutable();
    }

    private static void PinInside(
        ImmutableArray<KnifeProblem>.Builder problems,
        KnifeSubject subject,
        string pin,
        Circle circle,
        string part,
        Outline outline
    )
    {
        double depth = outline.SignedDistanceMm(circle.Centre);
        if (depth >= circle.RadiusMm)
        {
            return;
        }

        string where = FormattableString.Invariant($"({circle.Centre.X:0.###}, {circle.Centre.Y:0.###}) mm");
        string sentence =
            depth < 0
                ? FormattableString.Invariant(
                    $"The {pin} at {where} lies {-depth:0.###} mm outside the {part}; place it inside the {part}'s outline."
                )
                : FormattableString.Invariant(
                    $"The {pin} at {where} breaks through the {part}'s outline: it has a radius of {circle.RadiusMm:0.###} mm and only {depth:0.###} mm of {part} around its centre; make it smaller or move it in."
                );
        problems.Add(new KnifeProblem("PIN_OUTSIDE_PART", subject, sentence, circle.Centre));
    }
}
