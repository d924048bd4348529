namespace Flushback.Cli.Regression.Baselines;

/// <summary>An edge of a kept outline, a line or an arc, and how far a place is from it.</summary>
internal readonly struct KeptEdge
{
    private readonly (double X, double Y) _from;
    private readonly (double X, double Y) _to;

    // Of an arc: its centre, radius, the direction of its start from the centre, and the angle it turns, with its sign.
    private readonly (double X, double Y) _centre;
    private readonly double _radius;
    private readonly double _start;
    private readonly double _turn;

    /// <summary>The edge from a corner to the next.</summary>
    public KeptEdge(KeptVertex from, KeptVertex to)
    {
        (_from, _to) = ((from.X, from.Y), (to.X, to.Y));
        if (from.Bulge == 0 || (from.X == to.X && from.Y == to.Y))
        {
            return;
        }

        // The centre lies off the middle of the chord, to its left for a bulge between 0 and 1: (1 - b^2) / 4b of the
        // chord's length, as half the included angle is 2 atan b.
        double b = from.Bulge;
        double off = (1 - (b * b)) / (4 * b);
        _centre = (((from.X + to.X) / 2) - (off * (to.Y - from.Y)), ((from.Y + to.Y) / 2) + (off * (to.X - from.X)));
        _radius = Distance(_centre, _from);
        _start = Math.Atan2(_from.Y - _centre.Y, _from.X - _centre.X);
        _turn = 4 * Math.Atan(b);
    }

    private bool IsArc => _radius > 0;

    /// <summary>The place so far along the edge, from 0 at its start to 1 at its end.</summary>
    public (double X, double Y) At(double share)
    {
        if (!IsArc)
        {
            return (_from.X + (share * (_to.X - _from.X)), _from.Y + (share * (_to.Y - _from.Y)));
        }

        double angle = _start + (share * _turn);
        return (_centre.X + (_radius * Math.Cos(angle)), _centre.Y + (_radius * Math.Sin(angle)));
    }

    /// <summary>Least distance of a place from the edge, in millimetres.</summary>
    public double DistanceTo((double X, double Y) place)
    {
        if (IsArc)
        {
            double direction = Math.Atan2(place.Y - _centre.Y, place.X - _centre.X);
            double along = Math.IEEERemainder(direction - _start, Math.Tau) * Math.Sign(_turn);
            bool isBeside = (along < 0 ? along + Math.Tau : along) <= Math.Abs(_turn);
            return isBeside ? Math.Abs(Distance(place, _centre) - _radius) : ToEnds(place);
        }

        (double x, double y) = (_to.X - _from.X, _to.Y - _from.Y);
        double length = (x * x) + (y * y);
        double share = length == 0 ? 0 : (((place.X - _from.X) * x) + ((place.Y - _from.Y) * y)) / length;
        return Distance(place, At(Math.Clamp(share, 0, 1)));
    }

    private double ToEnds((double X, double Y) place) => Math.Min(Distance(place, _from), Distance(place, _to));

    private static double Distance((double X, double Y) one, (double X, double Y) other) =>
        Math.Sqrt(((one.X - other.X) * (one.X - other.X)) + ((one.Y - other.Y) * (one.Y - other.Y)));
}
