using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>How one stop answers to a face that is cut deeper.</summary>
/// <param name="Lift">Change of the dial, not zeroed.</param>
/// <param name="Turn">Change of the rest angle in radians.</param>
/// <param name="Gaps">Gaps that are open, and how each changes.</param>
internal sealed record StopMotion(PerDepth Lift, PerDepth Turn, ImmutableArray<(double GapMm, PerDepth Change)> Gaps)
{
    /// <summary>The answer of a stop; null where nothing touches.</summary>
    public static StopMotion? Of(PlanTrial trial, OutlineMotion motion, StopReading reading, bool isServed)
    {
        if (RestGradient.Of(trial.Knife, reading) is not { } gradient)
        {
            return null;
        }

        RigidMotion toBlade = Knives.Knife.BladeAt(-reading.RestAngle);
        Dictionary<(Point, Vector), PerDepth> known = [];
        PerDepth Opened(Point at, Vector normal)
        {
            if (!known.TryGetValue((at, normal), out PerDepth opened))
            {
                opened = motion.Opened(toBlade.Apply(at), toBlade.Apply(normal), isServed);
                known.Add((at, normal), opened);
            }

            return opened;
        }

        var front = gradient.Change((at, normal, _) => Opened(at, normal).Front);
        var rear = gradient.Change((at, normal, _) => Opened(at, normal).Rear);
        return new StopMotion(
            new PerDepth(front.LiftMm, rear.LiftMm),
            new PerDepth(front.AngleRad, rear.AngleRad),
            [
                .. gradient
                    .Gaps((at, normal, _) => Opened(at, normal).Front)
                    .Zip(
                        gradient.Gaps((at, normal, _) => Opened(at, normal).Rear),
                        (a, b) => (a.GapMm, new PerDepth(a.Change, b.Change))
                    ),
            ]
        );
    }
}
