using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Patterns.Pairs;

/// <summary>What is cut for two blades in one handle.</summary>
/// <remarks>
/// Pins of two springs at opposite ends end in the liner between, so each side of the handle has the holes of its own blade
/// and the liner has all. Everywhere else the pins go through, and both sides are alike.
/// </remarks>
internal static class PairPieces
{
    /// <summary>The first blade's pattern with the pieces that the second adds.</summary>
    /// <param name="first">The first blade with spring and handle.</param>
    /// <param name="second">The second, in its own frame.</param>
    /// <param name="toFirst">From there to the frame of the first.</param>
    /// <param name="page">The page.</param>
    public static DrawnPattern Of(DrawnPattern first, DrawnPattern second, RigidMotion toFirst, PairParameters page)
    {
        bool isShared = page.Arrangement == Arrangement.SharedSpring;
        bool sidesDiffer = !isShared && toFirst.Mirrored;
        PatternPiece side = Moved(second.Handle, toFirst) with
        {
            Finished = first.Handle.Finished,
            Rough = first.Handle.Finished,
        };
        ImmutableArray<PatternHole> ofSecond =
        [
            .. side.Holes.Where(hole => sidesDiffer || (isShared && hole.Pin == PinKind.Pivot)),
        ];
        PatternPiece both = first.Handle with
        {
            Holes = [.. first.Handle.Holes, .. ofSecond],
            Marks = [.. first.Handle.Marks, .. side.Marks],
        };
        PatternPiece blade = Moved(second.Blade, toFirst) with { ThicknessMm = page.Second.ThicknessMm };
        PatternPiece between = both with
        {
            Kind = PieceKind.LinerBetween,
            Marks = [],
            Count = 1,
            ThicknessMm = page.Second.LinerBetweenMm,
        };
        return first with
        {
            Blade = first.Blade with { ThicknessMm = page.Second.FirstThicknessMm },
            Handle = sidesDiffer ? first.Handle with { Count = 1 } : both,
            SecondPieces =
            [
                blade,
                .. isShared ? [] : new[] { Moved(second.Spring, toFirst) },
                .. sidesDiffer ? [side with { Count = 1 }] : Array.Empty<PatternPiece>(),
                .. isShared || page.Second.LinerBetweenMm == 0 ? [] : new[] { between },
            ],
        };
    }

    private static PatternPiece Moved(PatternPiece piece, RigidMotion motion)
    {
        Outline finished = piece.Finished.Transformed(motion).CounterClockwise();
        return piece with
        {
            IsSecond = true,
            Finished = finished,
            Rough = piece.HasStock ? piece.Rough.Transformed(motion).CounterClockwise() : finished,
            Holes = [.. piece.Holes.Select(hole => hole with { Circle = motion.Apply(hole.Circle), IsSecond = true })],
            Marks =
            [
                .. piece.Marks.Select(mark =>
                    mark with
                    {
                        Outline = mark.Outline.Transformed(motion).CounterClockwise(),
                    }
                ),
            ],
        };
    }
}
