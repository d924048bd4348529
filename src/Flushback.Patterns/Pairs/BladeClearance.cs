using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Distances;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Conflicts;

namespace Flushback.Patterns.Pairs;

/// <summary>Measures how near two blades in one handle come to each other, exactly on lines and arcs.</summary>
/// <param name="First">Outline of the first blade, open, in its frame.</param>
/// <param name="Second">Outline of the second blade, open, in its own frame.</param>
/// <param name="SecondToFirst">From the second frame to the first.</param>
internal sealed record BladeClearance(Outline First, Outline Second, RigidMotion SecondToFirst)
{
    // A way is looked at by steps; between them no point of a blade moves by more than its length times the step.
    private static readonly Angle _step = Angle.FromDegrees(0.5);

    /// <summary>The distance of the blades at two blade angles.</summary>
    public (Nearest Nearest, bool Overlaps) At(Angle first, Angle second)
    {
        Outline one = First.Transformed(Knife.BladeAt(first));
        Outline other = Second.Transformed(Knife.BladeAt(second).Then(SecondToFirst));
        Nearest nearest = Distance.Between(one, other);
        bool overlaps =
            nearest.DistanceMm <= 0 || one.Contains(other.Edges[0].Start) || other.Contains(one.Edges[0].Start);
        return (overlaps ? nearest with { DistanceMm = 0 } : nearest, overlaps);
    }

    /// <summary>The nearest of a way.</summary>
    /// <param name="kind">What the blades do.</param>
    /// <param name="firstRest">Angle at which the first blade rests closed.</param>
    /// <param name="secondRest">The same of the second.</param>
    /// <param name="cancellation">Looked at every step.</param>
    public ClearanceCase Along(ClearanceKind kind, Angle firstRest, Angle secondRest, CancellationToken cancellation)
    {
        bool firstTurns = kind is ClearanceKind.FirstTurnsSecondClosed or ClearanceKind.FirstTurnsSecondOpen;
        bool secondTurns = kind is ClearanceKind.SecondTurnsFirstClosed or ClearanceKind.SecondTurnsFirstOpen;
        Angle rest = firstTurns ? firstRest : secondRest;
        int steps = firstTurns || secondTurns ? (int)Math.Ceiling(rest.Radians / _step.Radians) : 0;
        ClearanceCase? least = null;
        for (int i = 0; i <= steps; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            Angle turned = steps == 0 ? rest : rest * ((double)i / steps);
            Angle first =
                firstTurns ? turned
                : kind == ClearanceKind.SecondTurnsFirstOpen ? Angle.Zero
                : firstRest;
            Angle second =
                secondTurns ? turned
                : kind == ClearanceKind.FirstTurnsSecondOpen ? Angle.Zero
                : secondRest;
            (Nearest nearest, bool overlaps) = At(first, second);
            if (least is not { } best || nearest.DistanceMm < best.DistanceMm)
            {
                least = new ClearanceCase(
                    kind,
                    nearest.DistanceMm,
                    overlaps,
                    first,
                    second,
                    nearest.OnFirst,
                    nearest.OnSecond
                );
            }
        }

        return least!.Value;
    }

    /// <summary>All ways, and what is too near in them.</summary>
    public PairClearance All(PairParameters page, Angle firstRest, Angle secondRest, CancellationToken cancellation)
    {
        SecondBladeParameters second = page.Second;
        double sideways = SidewaysMm(page);
        ImmutableArray<ClearanceCase> cases =
        [
            .. Enum.GetValues<ClearanceKind>().Select(kind => Along(kind, firstRest, secondRest, cancellation)),
        ];
        bool layered = sideways >= second.LeastClearanceMm;
        return new PairClearance(
            sideways,
            second.LeastClearanceMm,
            cases,
            layered ? [] : [.. cases.Where(c => c.DistanceMm < second.LeastClearanceMm).Select(c => Found(c, page))]
        );
    }

    /// <summary>
    /// Room between the blades' layers. On two springs each blade lies in the middle of its own, the liner between; a shared
    /// spring is one layer, in which two blades pass only where both together are thinner than it.
    /// </summary>
    public static double SidewaysMm(PairParameters page)
    {
        SecondBladeParameters second = page.Second;
        double width = page.First.Spring.WidthMm;
        return page.Arrangement == Arrangement.TwoSprings
            ? width + second.LinerBetweenMm - ((second.FirstThicknessMm + second.ThicknessMm) / 2)
            : width - second.FirstThicknessMm - second.ThicknessMm;
    }

    private static Finding Found(ClearanceCase found, PairParameters page)
    {
        SecondBladeParameters second = page.Second;
        string where = found.Kind switch
        {
            ClearanceKind.BothClosed => "When both are closed",
            ClearanceKind.FirstTurnsSecondClosed =>
                $"With the first blade at {Said.Degrees(found.FirstAngle.Degrees)} and the second closed",
            ClearanceKind.FirstTurnsSecondOpen =>
                $"With the first blade at {Said.Degrees(found.FirstAngle.Degrees)} and the second open",
            ClearanceKind.SecondTurnsFirstClosed =>
                $"With the second blade at {Said.Degrees(found.SecondAngle.Degrees)} and the first closed",
            _ => $"With the second blade at {Said.Degrees(found.SecondAngle.Degrees)} and the first open",
        };
        string what = found.Overlaps
            ? "the blades lie in each other's way"
            : $"the blades come within {Said.Length(found.DistanceMm)} of each other, less than the {Said.Length(second.LeastClearanceMm)} wanted";
        return new Finding(
            FindingCodes.BladesNear,
            found.Overlaps ? Severity.Fault : Severity.Warning,
            $"{where}, {what}.",
            page.Arrangement == Arrangement.SharedSpring
                ? "Shorten one of the blades, or make both thinner or the spring wider, so that they pass side by side."
                : "Make both blades thinner or the liner between them thicker, so that they pass side by side.",
            null,
            found.At,
            found.DistanceMm,
            second.LeastClearanceMm,
            "mm"
        );
    }
}
