using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Pairs;

namespace Flushback.Reports.Pictures;

/// <summary>Two blades in one handle at an angle each; everything in the frame of the first.</summary>
/// <param name="Pair">The blades.</param>
/// <param name="First">Angle of the first.</param>
/// <param name="Second">Angle of the second.</param>
internal sealed record PairPose(DrawnPair Pair, Angle First, Angle Second)
{
    /// <summary>The blades where a way of one past the other is nearest.</summary>
    public static PairPose At(DrawnPair pair, ClearanceCase nearest) =>
        new(pair, nearest.FirstAngle, nearest.SecondAngle);

    public bool IsShared => Pair.Parameters.Arrangement == Arrangement.SharedSpring;

    public RigidMotion FirstBlade => Knife.BladeAt(First);

    public RigidMotion SecondBlade => Knife.BladeAt(Second).Then(Pair.SecondToFirst);

    /// <summary>The first spring as it lies under its blade on the bench.</summary>
    public RigidMotion FirstSpring => Pair.First.Knife.SpringAt(RotationAt(Pair.FirstBench, First));

    /// <summary>The same of the second.</summary>
    public RigidMotion SecondSpring =>
        Pair.Second.Knife.SpringAt(RotationAt(Pair.SecondBench, Second)).Then(Pair.SecondToFirst);

    /// <summary>The shared spring bent: each half as it lies under its own blade; they meet at the centre pin.</summary>
    public IEnumerable<Edge> SharedSpring =>
        [
            .. FrontHalf(Pair.First.Knife).Select(FirstSpring.Apply),
            .. FrontHalf(Pair.Second.Knife).Reverse().Select(edge => SecondSpring.Apply(edge).Reversed),
        ];

    /// <summary>Every pin once; rear pins ride with their springs.</summary>
    public IReadOnlyList<Circle> Pins
    {
        get
        {
            List<Circle> pins = [.. PinsOf(Pair.First.Knife, RigidMotion.Identity, FirstSpring)];
            IEnumerable<Circle> others = PinsOf(Pair.Second.Knife, Pair.SecondToFirst, SecondSpring);
            pins.AddRange(others.Where(other => !pins.Exists(pin => pin.Centre.IsWithin(0.01, other.Centre))));
            return pins;
        }
    }

    private static IEnumerable<Circle> PinsOf(Knife knife, RigidMotion motion, RigidMotion spring)
    {
        yield return motion.Apply(new Circle(Point.Origin, knife.PivotRadiusMm));
        yield return motion.Apply(knife.CentrePin);
        if (knife.RearPin is { } rear)
        {
            yield return spring.Apply(rear);
        }
    }

    private static IEnumerable<Edge> FrontHalf(Knife knife) =>
        knife.Spring.Edges.Where(edge => edge.PointAt(0.5).X > knife.CentrePin.Centre.X);

    // The curve has a sample every half degree or finer, which no picture shows.
    private static Angle RotationAt(BenchReport bench, Angle blade) =>
        bench.Curve.Samples.MinBy(sample => Math.Abs((sample.BladeAngle - blade).Radians)).SpringRotation;
}
