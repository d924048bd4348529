using System.Runtime.InteropServices;
using Flushback.Geometry;
using Flushback.Geometry.Polar;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>
/// The bench, exactly: where the rigid spring lies on the tang at a blade angle, by the polar angles of both outlines
/// about the centre pin.
/// </summary>
/// <remarks>
/// Keeps buffers between calls, so that a sweep allocates nothing; not for use by two threads at once.
/// </remarks>
public sealed class BenchSolver
{
    // No spring is ever turned further than this from where it is drawn.
    private const double MostTurn = 0.35;

    private readonly PolarOutline _blade;
    private readonly SpringSides _spring;
    private readonly Box _bladeBounds;
    private readonly Point _centrePin;
    private readonly List<RadialPiece> _all = [];
    private readonly List<int> _upper = [];
    private readonly List<int> _lower = [];
    private readonly List<int> _behind = [];
    private readonly StackSweep _stack;
    private readonly CancellationToken _cancellation;

    /// <summary>Makes a knife ready to be swept.</summary>
    /// <param name="knife">The knife.</param>
    /// <param name="cancellation">Looked at once a pose, which then throws <see cref="OperationCanceledException"/>.</param>
    public BenchSolver(Knife knife, CancellationToken cancellation = default)
    {
        Knife = knife;
        _cancellation = cancellation;
        _blade = new PolarOutline(knife.Blade);
        _bladeBounds = knife.Blade.Bounds;
        _centrePin = knife.CentrePin.Centre;
        _spring = new SpringSides(new PolarOutline(knife.Spring), _centrePin);
        _stack = new StackSweep(_spring);
    }

    /// <summary>The knife being solved.</summary>
    public Knife Knife { get; }

    private ReadOnlySpan<RadialPiece> Pieces => CollectionsMarshal.AsSpan(_all);

    /// <summary>Where the spring can lie at a blade angle.</summary>
    /// <param name="bladeAngle">Blade angle, clockwise from open.</param>
    /// <param name="near">
    /// Spring rotation at a neighbouring blade angle. Where the nose may lie both under an overhanging shoulder and
    /// above it, the free interval that continues from there is taken; without it, the topmost.
    /// </param>
    public SpringPose PoseAt(Angle bladeAngle, Angle? near = null)
    {
        (Touch support, Touch ceiling) = BoundsAt(
            bladeAngle,
            near,
            riseMm: 0,
            ComesBehind(bladeAngle) ? _spring.ReachMm : _spring.FrontReachMm
        );
        Touch tail = LowestTailBound(Math.Min(ceiling.Rotation, support.Rotation + 0.5));
        if (tail.Rotation < ceiling.Rotation)
        {
            ceiling = tail;
        }

        return new SpringPose(
            bladeAngle,
            support.Rotation,
            ceiling.Rotation,
            blocked: ReachesCentrePin(),
            FeatureOf(support, _centrePin)
        );
    }

    /// <summary>What bounds the turn of the nose alone, with the whole spring raised from the pin it is drawn on.</summary>
    /// <remarks>Raising the spring over the blade lowers the blade under the spring: the same closed forms hold.</remarks>
    /// <param name="bladeAngle">Blade angle, clockwise from open.</param>
    /// <param name="near">A turn of the nose to follow from, as in <see cref="PoseAt"/>.</param>
    /// <param name="riseMm">Shift of the spring towards +y.</param>
    internal NoseBounds NoseBoundsAt(Angle bladeAngle, Angle near, double riseMm)
    {
        (Touch floor, Touch ceiling) = BoundsAt(bladeAngle, near, riseMm, _spring.FrontReachMm);
        Point pin = Raised(riseMm);
        return new NoseBounds(floor.Rotation, ceiling.Rotation, FeatureOf(floor, pin), FeatureOf(ceiling, pin));
    }

    private SpringPose.Feature FeatureOf(in Touch touch, Point pin) =>
        double.IsFinite(touch.Rotation)
            ? new SpringPose.Feature(touch, Pieces[touch.BladePiece], _spring.Pieces[touch.SpringPiece], pin)
            : default;

    private (Touch Support, Touch Ceiling) BoundsAt(Angle bladeAngle, Angle? near, double riseMm, double reachMm)
    {
        Gather(bladeAngle, riseMm, reachMm);
        return near is { } from && MayBeHeldDown(from.Radians)
            ? _stack.Bounds(Pieces, _upper, _lower, from.Radians)
            : (HighestSupport(), Touch.Unbounded);
    }

    private Point Raised(double riseMm) => new(_centrePin.X, _centrePin.Y + riseMm);

    private void Gather(Angle bladeAngle, double riseMm, double reachMm)
    {
        _cancellation.ThrowIfCancellationRequested();
        _all.Clear();
        _upper.Clear();
        _lower.Clear();
        _behind.Clear();

        // The blade stands still and the centre pin turns about it; the frame's turn goes into the polar angles.
        Point pin = Raised(riseMm).RotatedAbout(Point.Origin, bladeAngle);
        _blade.Split(pin, -bladeAngle, reachMm, _all);
        foreach (ref readonly RadialPiece piece in Pieces)
        {
            if (piece.InnerMm < _spring.FrontReachMm && piece.MaxAngle > _spring.FloorAt(piece.InnerMm) - MostTurn)
            {
                (piece.IsOutward ? _lower : _upper).Add(piece.Index);
            }

            if (piece.IsOutward && Math.Abs(piece.Inner.Angle) > Math.PI / 2)
            {
                _behind.Add(piece.Index);
            }
        }
    }

    /// <summary>False when no part of the blade can lie behind the centre pin: only the spring's front counts then.</summary>
    private bool ComesBehind(Angle bladeAngle)
    {
        (double sin, double cos) = Math.SinCos(bladeAngle.Radians);
        double foremost = (cos > 0 ? _bladeBounds.MinX : _bladeBounds.MaxX) * cos;
        double lowest = (sin > 0 ? _bladeBounds.MinY : _bladeBounds.MaxY) * sin;
        return foremost + lowest < _centrePin.X;
    }

    private bool ReachesCentrePin()
    {
        foreach (ref readonly RadialPiece piece in Pieces)
        {
            if (piece.InnerMm < _spring.ClearMm)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>
    /// True when some lower boundary of the blade may bound a free interval within following distance of a rotation.
    /// Otherwise what lies below the spring is solid as far as it can reach, and only the topmost interval is left.
    /// </summary>
    private bool MayBeHeldDown(double near)
    {
        ReadOnlySpan<RadialPiece> pieces = Pieces;
        ReadOnlySpan<RadialPiece> springs = _spring.FrontUpper;
        foreach (int lower in _lower)
        {
            ref readonly RadialPiece blade = ref pieces[lower];
            foreach (ref readonly RadialPiece spring in springs)
            {
                bool meets = blade.InnerMm <= spring.OuterMm && spring.InnerMm <= blade.OuterMm;
                if (meets && blade.MaxAngle - spring.MinAngle > near - ForbiddenRotations.FollowingWindow)
                {
                    return true;
                }
            }
        }

        return false;
    }

    private Touch HighestSupport()
    {
        Touch best = Touch.None;
        ReadOnlySpan<RadialPiece> pieces = Pieces;
        ReadOnlySpan<RadialPiece> springs = _spring.FrontLower;
        foreach (int upper in _upper)
        {
            ref readonly RadialPiece blade = ref pieces[upper];
            if (blade.MaxAngle - _spring.LowestFrontAngle <= best.Rotation)
            {
                continue;
            }

            foreach (ref readonly RadialPiece spring in springs)
            {
                Touching.Raise(ref best, blade, spring);
            }
        }

        return best;
    }

    private Touch LowestTailBound(double below)
    {
        Touch best = Touch.Unbounded with { Rotation = below };
        bool found = false;
        ReadOnlySpan<RadialPiece> pieces = Pieces;
        ReadOnlySpan<RadialPiece> springs = _spring.TailLower;
        foreach (int behind in _behind)
        {
            ref readonly RadialPiece blade = ref pieces[behind];
            double lowest = Math.Min(SpringSides.Behind(blade.MinAngle), SpringSides.Behind(blade.MaxAngle));
            if (lowest - _spring.HighestTailAngle >= best.Rotation)
            {
                continue;
            }

            foreach (ref readonly RadialPiece spring in springs)
            {
                double inner = Math.Max(blade.InnerMm, spring.InnerMm);
                double outer = Math.Min(blade.OuterMm, spring.OuterMm);
                if (inner <= outer)
                {
                    found |= TailTouching.Lower(ref best, blade, spring, inner, outer);
                }
            }
        }

        return found ? best : Touch.Unbounded;
    }
}
