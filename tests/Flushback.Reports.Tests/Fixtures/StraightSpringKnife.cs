using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Reports.Tests.Fixtures;

/// <summary>
/// An invented knife whose spring has a straight underside and whose tang bears on sharp corners only, so that what
/// the bench shows follows from a few lines of trigonometry (<see cref="StraightSpringBench"/>).
/// </summary>
/// <param name="HalfStopLiftMm">Reading the half stop is drawn for.</param>
/// <param name="ClosedLiftMm">Reading the closed position is drawn for.</param>
internal sealed record StraightSpringKnife(double HalfStopLiftMm = 0.127, double ClosedLiftMm = 0.381)
{
    /// <summary>The centre pin lies this far above the line of the underside.</summary>
    public const double PinAboveUndersideMm = 1.4;

    public static Circle CentrePin => new(new Point(-28, 5.4), 1.2);

    public static Point DialPoint => new(0, 7);

    /// <summary>Rear end of the open flat, where it meets the half-stop face.</summary>
    public Point OpenCorner => new(-FaceDepth(HalfStopLiftMm), 4);

    /// <summary>Where half-stop face and closed face meet.</summary>
    public Point ClosedCorner => new(-FaceDepth(HalfStopLiftMm), -FaceDepth(ClosedLiftMm));

    /// <summary>Front end of the closed face.</summary>
    public Point Kick => new(6.4, -FaceDepth(ClosedLiftMm));

    /// <summary>Where the shoulder butts on the end face.</summary>
    public static Point Butt => new(3.62, 5.88);

    public Knife Build(bool withHandle = true)
    {
        (Vertex Vertex, BladeFace Face)[] blade = Blade();
        (Vertex Vertex, SpringFace Face)[] spring = Spring();
        return new Knife
        {
            Blade = Outline.FromVertices([.. blade.Select(corner => corner.Vertex)]),
            BladeFaces = [.. blade.Select(corner => corner.Face)],
            Spring = Outline.FromVertices([.. spring.Select(corner => corner.Vertex)]),
            SpringFaces = [.. spring.Select(corner => corner.Face)],
            PivotRadiusMm = 1.5875,
            CentrePin = CentrePin,
            RearPin = new Circle(new Point(-78, 5.8), 0.8),
            Handle = withHandle ? Handle() : null,
            DialPoint = DialPoint,
        };
    }

    /// <summary>Spring rotation that lifts the dial point by a length.</summary>
    public static Angle RotationFor(double liftMm) =>
        new(
            Math.Asin(((DialPoint - CentrePin.Centre).Y + liftMm) / Arm)
                - Math.Asin((DialPoint - CentrePin.Centre).Y / Arm)
        );

    private static double Arm => (DialPoint - CentrePin.Centre).Length;

    // Distance of the underside's line from the pivot when the spring is turned to a reading: a face of the tang at
    // that depth lies along the underside.
    private static double FaceDepth(double liftMm)
    {
        (double sin, double cos) = Math.SinCos(RotationFor(liftMm).Radians);
        return (-CentrePin.Centre.X * sin) + (CentrePin.Centre.Y * cos) - PinAboveUndersideMm;
    }

    private (Vertex, BladeFace)[] Blade() =>
        [
            (new Vertex(3.2, 3.98, -0.01), BladeFace.OpenFlat),
            (new Vertex(OpenCorner, -0.008), BladeFace.HalfStopFace),
            (new Vertex(ClosedCorner, -0.01), BladeFace.ClosedFace),
            (new Vertex(Kick, 0.35), BladeFace.Kick),
            (new Vertex(7.1, Kick.Y + 0.9, -0.3), BladeFace.Edge),
            (new Vertex(8.4, -2.5), BladeFace.Edge),
            (new Vertex(48, -2.5, 0.12), BladeFace.Edge),
            (new Vertex(69.5, 3.2, -0.02), BladeFace.Spine),
            (new Vertex(52, 6.6), BladeFace.Spine),
            (new Vertex(30, 7), BladeFace.Spine),
            (new Vertex(3.2, 7), BladeFace.Shoulder),
            (new Vertex(4.22, 4.28, -0.9), BladeFace.NotchCorner),
        ];

    private static (Vertex, SpringFace)[] Spring() =>
        [
            (new Vertex(-82, 4.4), SpringFace.Tail),
            (new Vertex(-34, 4.4, -0.2), SpringFace.Tail),
            (new Vertex(-32.5, 3.5), SpringFace.Tail),
            (new Vertex(-24, 3.5, 0.2), SpringFace.Underside),
            (new Vertex(-21, 4.35), SpringFace.Underside),
            (new Vertex(-13, 4.35, 0.2), SpringFace.Underside),
            (new Vertex(-11.8, 4), SpringFace.Underside),
            (new Vertex(3.3, 4, 0.4142), SpringFace.NoseCorner),
            (new Vertex(3.78, 4.48), SpringFace.EndFace),
            (new Vertex(Butt), SpringFace.EndFace),
            (new Vertex(3.05, 7, 0.012), SpringFace.Back),
            (new Vertex(-82, 7, 0.3), SpringFace.Back),
        ];

    private static Outline Handle() =>
        Outline.FromVertices([
            new Vertex(6.4, 7, 0.012),
            new Vertex(-82, 7, 0.45),
            new Vertex(-86, -3.4, 0.2),
            new Vertex(-76, -6.6, -0.03),
            new Vertex(-30, -6, 0.03),
            new Vertex(2, -6.8, 0.35),
            new Vertex(6.4, -3),
        ]);
}
