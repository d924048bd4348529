namespace Flushback.Mechanism.Bench.Solving;

/// <summary>The spring rotations that overlap the blade at one blade angle, and the free intervals left between them.</summary>
internal sealed class ForbiddenRotations
{
    /// <summary>
    /// How far the spring may move from one blade angle to the next and still be followed, in radians: far more than
    /// half a degree of blade moves it, far less than the height of a shoulder.
    /// </summary>
    public const double FollowingWindow = 0.01;

    private readonly List<Interval> _intervals = [];

    /// <summary>Forgets all intervals.</summary>
    public void Clear() => _intervals.Clear();

    /// <summary>Adds what one strip of the blade forbids one strip of the spring.</summary>
    public void Add(in Touch from, in Touch to) => _intervals.Add(new Interval(from, to));

    /// <summary>The free interval nearest to a rotation; where none is near, bounds that cross.</summary>
    public (Touch Support, Touch Ceiling) GapNear(double near)
    {
        _intervals.Sort(static (a, b) => a.From.Rotation.CompareTo(b.From.Rotation));
        (Touch Support, Touch Ceiling) best = (Touch.None, Touch.None);
        double nearest = double.PositiveInfinity;
        Touch top = Touch.None;
        for (int i = 0; i <= _intervals.Count; i++)
        {
            Touch ceiling = i < _intervals.Count ? _intervals[i].From : Touch.Unbounded;
            double away = Math.Max(0, Math.Max(top.Rotation - near, near - ceiling.Rotation));
            if (i > 0 && top.Rotation <= ceiling.Rotation && away < nearest)
            {
                (nearest, best) = (away, (top, ceiling));
            }

            if (i < _intervals.Count && _intervals[i].To.Rotation > top.Rotation)
            {
                top = _intervals[i].To;
            }
        }

        return nearest <= FollowingWindow ? best : Crossed(near);
    }

    /// <summary>The top of what lies below a rotation and the bottom of what lies above it, though they overlap.</summary>
    private (Touch Support, Touch Ceiling) Crossed(double near)
    {
        Touch support = Touch.None;
        Touch ceiling = Touch.Unbounded;
        foreach (Interval interval in _intervals)
        {
            if (interval.To.Rotation > near + FollowingWindow)
            {
                ceiling = interval.From.Rotation < ceiling.Rotation ? interval.From : ceiling;
            }
            else if (interval.To.Rotation > support.Rotation)
            {
                support = interval.To;
            }
        }

        return (support, ceiling);
    }

    private readonly record struct Interval(Touch From, Touch To);
}
