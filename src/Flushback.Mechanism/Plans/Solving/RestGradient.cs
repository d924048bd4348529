using Flushback.Geometry;
using Flushback.Geometry.Distances;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>How dial and rest angle answer when the gaps at the contacts of a stop open a little: exact to first order.</summary>
/// <remarks>
/// Contact i lies at P with the normal n from tang to spring. Turning the spring by dphi about the centre pin C opens its
/// gap by (P - C) x n dphi, turning the blade by dtheta by P x n dtheta, metal off by its depth; at rest all stay shut
/// (rigid bodies, elementary). Curvature of the faces counts in second order only. With one contact the lift is lowest
/// there, so the rest angle does not count for the dial (the envelope theorem), and it is not told.
/// </remarks>
internal sealed class RestGradient
{
    // Contacts that touch, against those within the tolerance of the bench: a rest is told to a fraction of this.
    private const double TouchMm = 1e-8;

    private const double OnePlaceMm = 0.5;

    // How far from its true place on a round a contact is listed at most.
    private const double BesideMm = 0.05;

    private readonly (Point At, Vector Normal, Contact Contact)[] _contacts;
    private readonly (Point At, Vector Normal, Contact Contact)[] _others;
    private readonly Point _pin;
    private readonly double _armMm;

    private RestGradient(
        (Point, Vector, Contact)[] contacts,
        (Point, Vector, Contact)[] others,
        Point pin,
        double armMm
    ) => (_contacts, _others, _pin, _armMm) = (contacts, others, pin, armMm);

    /// <summary>True when two contacts hold the blade, so that depths turn it.</summary>
    public bool HoldsAngle => _contacts.Length == 2;

    /// <summary>The contacts of a reading that carry it; null when there are none.</summary>
    public static RestGradient? Of(Knife knife, StopReading reading)
    {
        (Point At, Vector Normal, Contact Contact)[] near =
        [
            .. reading
                .Contacts.Select(contact => OnRound(knife, reading, contact))
                .Concat(reading.NearMisses)
                .SelectMany(contact => contact.Ends.Select(end => (end, contact.Normal, contact))),
        ];
        (Point At, Vector Normal, Contact Contact)[] touching =
        [
            .. near.Where(place => Math.Abs(place.Contact.GapMm) < TouchMm),
        ];
        if (touching.Length == 0)
        {
            return null;
        }

        var outermost = (
            from a in touching
            from b in touching
            orderby a.At.DistanceTo(b.At) descending
            select (a, b)
        ).First();
        (Point At, Vector, Contact)[] carrying =
            outermost.a.At.DistanceTo(outermost.b.At) > OnePlaceMm ? [outermost.a, outermost.b] : [touching[0]];
        double arm = (knife.DialPoint - knife.CentrePin.Centre).Rotated(reading.SpringRotation).X;
        return new RestGradient(carrying, [.. near.Except(carrying)], knife.CentrePin.Centre, arm);
    }

    /// <summary>
    /// A contact on a round hard by the end of a face is listed at that end, with what is left of the gap there: the place
    /// on the round itself. Other contacts as they are.
    /// </summary>
    private static Contact OnRound(Knife knife, StopReading reading, Contact contact)
    {
        if (Math.Abs(contact.GapMm) < TouchMm)
        {
            return contact;
        }

        RigidMotion blade = Knife.BladeAt(reading.RestAngle);
        RigidMotion spring = knife.SpringAt(reading.SpringRotation);
        Edge[] springs = [.. knife.Spring.Edges.Select(spring.Apply)];
        foreach (Edge edge in knife.Blade.Edges.Where(edge => edge.IsArc && edge.Bulge > 0))
        {
            Edge round = blade.Apply(edge);
            bool isBeside = contact.Ends.Any(end =>
                round.Start.IsWithin(BesideMm, end) || round.End.IsWithin(BesideMm, end)
            );
            if (!isBeside)
            {
                continue;
            }

            Nearest nearest = Distance.Between([round], springs.AsSpan());
            if (Math.Abs(nearest.DistanceMm) < TouchMm)
            {
                return contact with
                {
                    At = nearest.OnFirst,
                    Normal = (nearest.OnFirst - round.Centre).Normalized,
                    GapMm = nearest.DistanceMm,
                    LengthMm = 0,
                };
            }
        }

        return contact;
    }

    /// <summary>Change of the lift in millimetres and of the rest angle in radians, for opened gaps by place and normal.</summary>
    public (double LiftMm, double AngleRad) Change(Func<Point, Vector, Contact, double> openedMm)
    {
        (double spring, double blade) = Turns(openedMm);
        return (_armMm * spring, blade);
    }

    /// <summary>The gaps that do not carry, and how each changes for opened gaps.</summary>
    public IEnumerable<(double GapMm, double Change)> Gaps(Func<Point, Vector, Contact, double> openedMm)
    {
        (double spring, double blade) = Turns(openedMm);
        foreach ((Point at, Vector normal, Contact contact) in _others)
        {
            double change =
                ((at - _pin).Cross(normal) * spring)
                + ((at - Point.Origin).Cross(normal) * blade)
                + openedMm(at, normal, contact);
            yield return (contact.GapMm, change);
        }
    }

    private (double SpringRad, double BladeRad) Turns(Func<Point, Vector, Contact, double> openedMm)
    {
        (Point a, Vector n, Contact first) = _contacts[0];
        double spring = (a - _pin).Cross(n);
        double opened = openedMm(a, n, first);
        if (!HoldsAngle)
        {
            return (-opened / spring, 0);
        }

        (Point b, Vector m, Contact second) = _contacts[1];
        double blade = (a - Point.Origin).Cross(n);
        double otherSpring = (b - _pin).Cross(m);
        double otherBlade = (b - Point.Origin).Cross(m);
        double other = openedMm(b, m, second);
        double determinant = (spring * otherBlade) - (blade * otherSpring);
        return (
            -((opened * otherBlade) - (other * blade)) / determinant,
            -((spring * other) - (otherSpring * opened)) / determinant
        );
    }
}
