using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using NetTopologySuite.Geometries;
using NetTopologySuite.Geometries.Prepared;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;
using Point = Flushback.Geometry.Point;

namespace Flushback.Catalogue.Referee;

/// <summary>
/// An independent referee of the bench: polygons, an overlap test and bisection, and nothing of the solver it judges.
/// </summary>
/// <remarks>
/// <para>
/// Arcs are flattened to a sagitta of <see cref="SagittaMm"/>, centred, within <see cref="FineReachMm"/> of the pivot
/// and on the spring in front of the centre pin; a lift is then right within about a tenth of a micrometre.
/// </para>
/// <para>
/// What carries the spring is looked for in front of the centre pin only, as on a bench, where the maker's finger
/// keeps the nose down; that the whole spring is free of the whole blade is asked separately.
/// </para>
/// </remarks>
public sealed class BruteForceBench
{
    /// <summary>Height of a chord's arc on tang and nose: half of it is the largest distance from the true arc.</summary>
    public const double SagittaMm = 5e-8;

    /// <summary>Blade arcs that pass nearer to the pivot than this are flattened finely.</summary>
    public const double FineReachMm = 14;

    /// <summary>Bisection ends at this spring rotation: some 3e-9 mm at the nose.</summary>
    private const double RotationResolution = 1e-10;

    /// <summary>A pose counts as free when the spring is, turned up by this much more.</summary>
    private const double FreeSlack = 2e-9;

    /// <summary>Highest spring rotation looked at; no cam of a knife lifts this far.</summary>
    private const double Highest = 0.35;

    /// <summary>Step of the search down; a tenth of a spring's depth at the nose, so that no spring is stepped over.</summary>
    private const double SearchStep = 0.01;

    private static readonly double _midSwing = Angle.FromDegrees(45).Radians;

    private readonly IPreparedGeometry _blade;
    private readonly IPreparedGeometry _below;
    private readonly IPreparedGeometry? _shoulder;
    private readonly MovingSpring _wholeSpring;
    private readonly MovingSpring _front;
    private readonly Vector _dialArm;

    /// <summary>Sets a blade (drawn open, pivot at the origin) and a spring on the bench.</summary>
    public BruteForceBench(Outline bladeOpen, Outline springAsDrawn, Point centrePin, Point dialPoint)
    {
        GeometryFactory factory = new();
        Flattening flattening = new(SagittaMm, 1e-4);
        Coordinate[] bladeRing = flattening.Ring(
            bladeOpen.CounterClockwise(),
            p => p.DistanceTo(Point.Origin) < FineReachMm
        );
        Polygon spring = factory.CreatePolygon(
            flattening.Ring(springAsDrawn.CounterClockwise(), p => p.X > centrePin.X)
        );
        SplitBlade split = SplitBlade.Cut(bladeRing, spring);

        _blade = PreparedGeometryFactory.Prepare(factory.CreatePolygon(bladeRing));
        _below = PreparedGeometryFactory.Prepare(split.Below);
        _shoulder = split.Above is null ? null : PreparedGeometryFactory.Prepare(split.Above);
        Coordinate pin = new(centrePin.X, centrePin.Y);
        _wholeSpring = new MovingSpring(spring, pin);
        _front = new MovingSpring(InFrontOf(centrePin.X, spring), pin);
        _dialArm = dialPoint - centrePin;
    }

    /// <summary>Sets a knife on the bench.</summary>
    public static BruteForceBench For(Knife knife) =>
        new(knife.Blade, knife.Spring, knife.CentrePin.Centre, knife.DialPoint);

    /// <summary>Travel of the dial from one spring rotation to another, towards +y, in millimetres.</summary>
    public double LiftMm(Angle from, Angle to) => _dialArm.Rotated(to).Y - _dialArm.Rotated(from).Y;

    /// <summary>The pose at a blade angle.</summary>
    /// <param name="bladeAngle">Blade angle.</param>
    /// <param name="guess">A guess of the spring rotation, which saves time and changes nothing.</param>
    public BenchPose PoseAt(Angle bladeAngle, Angle? guess = null)
    {
        double angle = bladeAngle.Radians;
        double rotation = LowestFree(angle < _midSwing ? _below : _blade, angle, guess?.Radians);
        bool free = !_blade.Intersects(_wholeSpring.SeenFromBlade(angle, rotation + FreeSlack));
        return new BenchPose(bladeAngle, new Angle(rotation), free);
    }

    /// <summary>Poses at evenly spaced blade angles, both ends included.</summary>
    public IReadOnlyList<BenchPose> Sweep(Angle from, Angle to, int count)
    {
        List<BenchPose> poses = [];
        for (int i = 0; i < count; i++)
        {
            Angle angle = from + ((to - from) * (i / (double)(count - 1)));
            Angle? guess = poses.Count < 2 ? null : (poses[^1].SpringRotation * 2) - poses[^2].SpringRotation;
            poses.Add(PoseAt(angle, guess));
        }

        return poses;
    }

    /// <summary>
    /// Where an opened blade rests: at the shoulder, or before it where the lift is lowest already. Null when there is no
    /// shoulder.
    /// </summary>
    public BenchPose? OpenRest() =>
        OpenStop() is { } stop ? RestBetween(stop.BladeAngle, stop.BladeAngle + Angle.FromDegrees(10)) : null;

    /// <summary>
    /// The true open stop: coming from mid-swing, the first blade angle at which the spring, resting on what lies below
    /// it, meets the shoulder. Null when there is no shoulder to meet.
    /// </summary>
    public BenchPose? OpenStop()
    {
        if (_shoulder is null)
        {
            return null;
        }

        double step = Angle.FromDegrees(1).Radians;
        double free = _midSwing;
        double rotation = LowestFree(_below, free, null);
        double met = free;
        while (!MeetsShoulder(met, ref rotation))
        {
            free = met;
            met -= step;
            if (met < -_midSwing)
            {
                return null;
            }
        }

        while (free - met > RotationResolution)
        {
            double middle = (free + met) / 2;
            (free, met) = MeetsShoulder(middle, ref rotation) ? (free, middle) : (middle, met);
        }

        return PoseAt(new Angle(free), new Angle(rotation));
    }

    /// <summary>The lowest point of the lift within a range of blade angles in which it has only one; an end may be it.</summary>
    public BenchPose RestBetween(Angle from, Angle to)
    {
        double golden = (Math.Sqrt(5) - 1) / 2;
        BenchPose inner = PoseAt(to - ((to - from) * golden));
        BenchPose outer = PoseAt(from + ((to - from) * golden));
        while ((to - from).Radians > 1e-9)
        {
            if (inner.SpringRotation < outer.SpringRotation)
            {
                to = outer.BladeAngle;
                outer = inner;
                inner = PoseAt(to - ((to - from) * golden), inner.SpringRotation);
            }
            else
            {
                from = inner.BladeAngle;
                inner = outer;
                outer = PoseAt(from + ((to - from) * golden), outer.SpringRotation);
            }
        }

        return inner;
    }

    /// <summary>The part of the spring that lies in front of the centre pin.</summary>
    private static Polygon InFrontOf(double x, Polygon spring)
    {
        Envelope box = spring.EnvelopeInternal;
        Envelope ahead = new(x + 2, box.MaxX + 1, box.MinY - 1, box.MaxY + 1);
        return (Polygon)OverlayNGRobust.Overlay(spring, spring.Factory.ToGeometry(ahead), SpatialFunction.Intersection);
    }

    private bool MeetsShoulder(double bladeAngle, ref double rotation)
    {
        rotation = LowestFree(_below, bladeAngle, rotation);
        return _shoulder!.Intersects(_front.SeenFromBlade(bladeAngle, rotation));
    }

    private bool Blocked(IPreparedGeometry part, double bladeAngle, double rotation) =>
        part.Intersects(_front.SeenFromBlade(bladeAngle, rotation));

    private double LowestFree(IPreparedGeometry part, double bladeAngle, double? guess)
    {
        (double blocked, double free) = guess is { } near ? BracketAround(part, bladeAngle, near) : (0, 0);
        if (blocked >= free)
        {
            (blocked, free) = BracketFromAbove(part, bladeAngle);
        }

        while (free - blocked > RotationResolution)
        {
            double middle = (free + blocked) / 2;
            (blocked, free) = Blocked(part, bladeAngle, middle) ? (middle, free) : (blocked, middle);
        }

        return free;
    }

    /// <summary>A blocked and a free rotation about a guess, or two equal ones when none is found near it.</summary>
    private (double Blocked, double Free) BracketAround(IPreparedGeometry part, double bladeAngle, double guess)
    {
        for (double width = 2e-5; width < SearchStep; width *= 5)
        {
            if (!Blocked(part, bladeAngle, guess + width) && Blocked(part, bladeAngle, guess - width))
            {
                return (guess - width, guess + width);
            }
        }

        return (guess, guess);
    }

    private (double Blocked, double Free) BracketFromAbove(IPreparedGeometry part, double bladeAngle)
    {
        double free = Highest;
        while (!Blocked(part, bladeAngle, free - SearchStep))
        {
            free -= SearchStep;
            if (free < -1)
            {
                throw new ArgumentException("Blade and spring never touch.");
            }
        }

        return (free - SearchStep, free);
    }
}
