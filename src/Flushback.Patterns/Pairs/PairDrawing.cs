using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Checking;
using Flushback.Geometry.Offsets;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Conflicts;
using Flushback.Patterns.Layout;

namespace Flushback.Patterns.Pairs;

/// <summary>Draws two blades in one handle from a page of dimensions.</summary>
public static class PairDrawing
{
    private const double ReadsMm = 1e-6;

    /// <summary>Draws both blades so that the dial reads over each what is wanted, and measures the way of one past the other.</summary>
    /// <param name="page">The page.</param>
    /// <param name="cancellation">Looked at once a pose.</param>
    /// <returns>The pair, or which parameters are in conflict; exactly one of the two.</returns>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static (DrawnPair? Pair, PatternConflict? Conflict) Make(
        PairParameters page,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(page);
        PairPages pages = new(page);
        if (AtBothEnds(page, pages) is { } wanting)
        {
            return (null, wanting);
        }

        (DrawnPattern? first, PatternConflict? conflict) = PatternDrawing.Make(pages.First, cancellation);
        if (first is null)
        {
            return (null, conflict);
        }

        (DrawnPattern? second, conflict) = PatternDrawing.Make(pages.Second, cancellation);
        if (second is null)
        {
            return (null, conflict! with { Sentence = $"Of the second blade: {conflict.Sentence}" });
        }

        RigidMotion toFirst = pages.AtOtherEnd
            ? new RigidMotion(Angle.FromDegrees(180), new Vector(-pages.SpanMm, 0), Mirrored: true)
            : RigidMotion.Identity;
        if (page.Arrangement == Arrangement.SharedSpring)
        {
            PatternLayout one = new(pages.First);
            PatternLayout other = new(pages.Second);
            first = OnDouble(first, DoubleSpring.Draw(one, other, toFirst), cancellation);
            second = OnDouble(second, DoubleSpring.Draw(other, one, toFirst.Inverse), cancellation);
        }

        second = InHandleOf(first, second, toFirst);
        BenchReport firstBench = Read(first, cancellation);
        BenchReport secondBench = Read(second, cancellation);
        PatternConflict? wrong =
            Wrong(first, firstBench, "first") ?? Wrong(second, secondBench, "second") ?? Pivot(first, second, toFirst);
        if (wrong is not null)
        {
            return (null, wrong);
        }

        BladeClearance clearance = new(first.Knife.Blade, second.Knife.Blade, toFirst);
        return (
            new DrawnPair
            {
                Parameters = page,
                First = PairPieces.Of(first, second, toFirst, page),
                Second = second,
                SecondToFirst = toFirst,
                Clearance = clearance.All(
                    page,
                    firstBench.Stops[^1].RestAngle,
                    secondBench.Stops[^1].RestAngle,
                    cancellation
                ),
                FirstBench = firstBench,
                SecondBench = secondBench,
            },
            null
        );
    }

    /// <summary>What two blades at opposite ends need: a level back over both tangs, and pins that end between the springs.</summary>
    private static PatternConflict? AtBothEnds(PairParameters page, PairPages pages) =>
        !pages.AtOtherEnd ? null
        : page.First.Handle.BackDropMm > 0
            ? Conflict.Of(
                $"A back drop of {Said.Length(page.First.Handle.BackDropMm)} leaves no level back over a blade at the other end; set it to 0 there.",
                "handle.back_drop_mm"
            )
        : page.Arrangement == Arrangement.TwoSprings && !(page.Second.LinerBetweenMm > 0)
            ? Conflict.Of(
                "Two springs at opposite ends have pins of their own, which have to end in a liner between them; give that liner a thickness, or let both blades open at the same end."
            )
        : null;

    private static DrawnPattern OnDouble(
        DrawnPattern pattern,
        (Outline Outline, ImmutableArray<SpringFace> Faces) spring,
        CancellationToken cancellation
    )
    {
        double stock = pattern.Dimensions.Stock.SpringMm;
        return pattern with
        {
            Knife = pattern.Knife with { Spring = spring.Outline, SpringFaces = spring.Faces, RearPin = null },
            Spring = pattern.Spring with
            {
                Finished = spring.Outline,
                Rough = stock > 0 ? Offset.Of(spring.Outline, stock, cancellation)[0].Border : spring.Outline,
                Holes = [.. pattern.Spring.Holes.Where(hole => hole.Pin != PinKind.Rear)],
            },
            Handle = pattern.Handle with { Holes = [.. pattern.Handle.Holes.Where(hole => hole.Pin != PinKind.Rear)] },
        };
    }

    /// <summary>The second blade in the handle that the first one's page draws.</summary>
    private static DrawnPattern InHandleOf(DrawnPattern first, DrawnPattern second, RigidMotion toFirst)
    {
        Outline handle = first.Handle.Finished.Transformed(toFirst.Inverse).CounterClockwise();
        return second with
        {
            Knife = second.Knife with { Handle = handle },
            Handle = second.Handle with { Finished = handle, Rough = handle },
        };
    }

    private static BenchReport Read(DrawnPattern pattern, CancellationToken cancellation)
    {
        Placement placement = new(pattern.Knife, RigidMotion.Identity, Angle.Zero, DrawnBladeAngleFound: false);
        return BenchCheck.Run(placement, new BenchSettings { Targets = pattern.Targets }, cancellation);
    }

    private static PatternConflict? Wrong(DrawnPattern pattern, BenchReport bench, string which)
    {
        if (!OutlineCheck.FlawsOf(pattern.Spring.Finished.Vertices.AsSpan(), GeometryTolerances.Default).IsEmpty)
        {
            return Conflict.Of(
                "The two halves of the shared spring would cross each other; lower the preload or move the centre pin towards the middle.",
                "spring.preload_mm",
                "pins.centre_behind_mm"
            );
        }

        foreach (StopReading stop in bench.Stops)
        {
            double wanted = pattern.Targets.For(stop.Stop).LiftMm;
            if (!stop.Rests || Math.Abs(stop.LiftMm - wanted) > ReadsMm)
            {
                return Conflict.Of(
                    $"The {which} blade does not read what is wanted once the other end of the spring is drawn; move the centre pin, or lower the preload.",
                    "pins.centre_behind_mm",
                    "spring.preload_mm"
                );
            }
        }

        return bench.Findings.FirstOrDefault(finding => finding.Severity == Severity.Fault) is { } fault
            ? Conflict.Of(
                $"Of the {which} blade: {fault.Message} {fault.Advice}",
                "tang.kick_height_mm",
                "spring.centre_depth_mm",
                "blade.length_mm"
            )
            : null;
    }

    /// <summary>Metal of the handle around the second pivot.</summary>
    private static PatternConflict? Pivot(DrawnPattern first, DrawnPattern second, RigidMotion toFirst)
    {
        Circle pivot = toFirst.Apply(second.Blade.Holes[0].Circle);
        double wall = first.Handle.Finished.SignedDistanceMm(pivot.Centre) - pivot.RadiusMm;
        double least = first.Dimensions.Pins.WallMm;
        return wall >= least
            ? null
            : Conflict.Of(
                $"The second pivot has {Said.Length(wall)} of the handle around it where the pin wall asks for {Said.Length(least)}; place it farther from the handle's end.",
                "pins.wall_mm",
                "handle.closed_length_mm"
            );
    }
}
