using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;

namespace Flushback.Mechanism.Knives;

/// <summary>Brings a drawn knife into the knife frame, or says why it is none.</summary>
public static class KnifePlacement
{
    private static readonly Angle _mostDrawnTurn = Angle.FromDegrees(20);

    /// <summary>Finds the knife frame from the pins, the back and the drawn blade angle, and names the faces.</summary>
    /// <returns>The placement, or every problem found; exactly one of the two.</returns>
    public static (Placement? Placement, ImmutableArray<KnifeProblem> Problems) Place(
        DrawnKnife drawn,
        CancellationToken cancellation = default
    )
    {
        ImmutableArray<KnifeProblem> problems = PartCheck.Check(drawn);
        if (!problems.IsEmpty)
        {
            return (null, problems);
        }

        KnifeFrame frame = KnifeFrame.Of(drawn);
        Outline drawnBlade = drawn.Blade.Transformed(frame.ToKnife);
        (Angle? bladeAngle, KnifeProblem? unclear) = DrawnBlade.AngleOf(drawnBlade, drawn.DrawnBladeAngle);
        if (bladeAngle is not { } angle)
        {
            return (null, [unclear!]);
        }

        Placement placement = new(
            Build(drawn, frame, drawnBlade.Transformed(Knife.BladeAt(-angle)).CounterClockwise()),
            frame.ToKnife.Inverse,
            angle,
            DrawnBladeAngleFound: drawn.DrawnBladeAngle is null
        );
        placement = placement with { Knife = FaceOverriding.Apply(placement, drawn.FaceOverrides) };
        return Reach(placement, cancellation) is { } unreachable ? (null, [unreachable]) : (placement, []);
    }

    private static Knife Build(DrawnKnife drawn, KnifeFrame frame, Outline blade)
    {
        Outline spring = drawn.Spring.Transformed(frame.ToKnife).CounterClockwise();
        Circle centrePin = frame.ToKnife.Apply(drawn.CentrePin);
        return new Knife
        {
            Blade = blade,
            BladeFaces = BladeFaceFinder.Find(blade, Nose(spring)),
            Spring = spring,
            SpringFaces = SpringFaceFinder.Find(spring, centrePin.Centre),
            PivotRadiusMm = drawn.Pivot.RadiusMm,
            CentrePin = centrePin,
            RearPin = drawn.RearPin is { } rear ? frame.ToKnife.Apply(rear) : null,
            Handle = drawn.Handle?.Transformed(frame.ToKnife).CounterClockwise(),
            DialPoint = frame.DialPoint,
            HasHalfStop = drawn.HasHalfStop,
        };
    }

    /// <summary>The lower front corner: the vertex farthest forward and down.</summary>
    private static Point Nose(Outline spring) => spring.Edges.Select(edge => edge.Start).MaxBy(p => p.X - p.Y);

    private static KnifeProblem? Reach(Placement placement, CancellationToken cancellation)
    {
        BenchSolver solver = new(placement.Knife, cancellation);
        foreach (double degrees in new[] { 30.0, 45, 90, 135, 150 })
        {
            SpringPose pose = solver.PoseAt(Angle.FromDegrees(degrees));
            if (!double.IsFinite(pose.Lowest.Radians))
            {
                return new KnifeProblem(
                    "OUTLINES_NEVER_TOUCH",
                    KnifeSubject.Knife,
                    FormattableString.Invariant(
                        $"The spring never reaches the tang: at a blade angle of {degrees:0} degrees no turn of the spring about its centre pin brings the two together; check that both outlines are drawn in their places about the same pivot and centre pin."
                    )
                );
            }

            if (Math.Abs(pose.Lowest.Radians) > _mostDrawnTurn.Radians)
            {
                return new KnifeProblem(
                    "SPRING_FAR_FROM_TANG",
                    KnifeSubject.Spring,
                    FormattableString.Invariant(
                        $"The spring would have to turn {pose.Lowest.Degrees:0.#} degrees about its centre pin to lie on the tang at a blade angle of {degrees:0} degrees; draw it where it lies in the handle, or check the pins and the drawn blade angle."
                    )
                );
            }
        }

        return null;
    }
}
