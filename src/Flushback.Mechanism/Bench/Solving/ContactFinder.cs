using Flushback.Geometry;
using Flushback.Geometry.Distances;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>Lists all places where blade and spring touch at a pose, and the nearest that do not.</summary>
/// <remarks>
/// Every edge of the blade is held against every edge of the spring; a pair counts where its distance is least among
/// its neighbours along both outlines, so that the vertex of a face that has been split is no contact of its own.
/// </remarks>
internal sealed class ContactFinder(Knife knife, FaceNaming faces, BenchSettings settings)
{
    // Farther apart than this two edges are no near miss.
    private const double NearMm = 1.5;

    // Distances closer than this are equal: rounding, not shape.
    private const double SameMm = 1e-9;

    // The sine of an angle that is rounding, not shape.
    private const double SameDirection = 1e-7;

    // Two places closer than this are one, seen from two edges that share a vertex.
    private const double OnePlaceMm = 0.01;

    /// <summary>Contacts from rear to front, and near misses nearest first, with the spring at a rotation.</summary>
    public (List<Contact> Contacts, List<Contact> NearMisses) At(Angle bladeAngle, Angle rotation)
    {
        Edge[] blade = [.. knife.Blade.Edges.Select(Knife.BladeAt(bladeAngle).Apply)];
        Edge[] spring = [.. knife.Spring.Edges.Select(knife.SpringAt(rotation).Apply)];
        Dictionary<(int Blade, int Spring), Nearest> near = NearPairs(blade, spring);

        List<ContactStretch> stretches = ContactStretch.AllOf(
            near.Keys.Select(pair => (pair, blade[pair.Blade], spring[pair.Spring])),
            settings.ContactToleranceMm
        );
        List<Contact> contacts = [.. stretches.Select(stretch => ToContact(blade, stretch, rotation))];
        List<Contact> nearMisses = [];
        foreach (((int i, int j), Nearest nearest) in near.OrderBy(pair => pair.Value.DistanceMm))
        {
            if (
                !IsLeast(blade, spring, (i, j), nearest) || stretches.Exists(stretch => stretch.Covers(nearest.OnFirst))
            )
            {
                continue;
            }

            bool touches = nearest.DistanceMm <= settings.ContactToleranceMm;
            AddOnce(touches ? contacts : nearMisses, ToContact(blade, spring, (i, j), nearest, rotation));
        }

        contacts.Sort((a, b) => a.At.X.CompareTo(b.At.X));
        return (contacts, nearMisses);
    }

    private static Dictionary<(int Blade, int Spring), Nearest> NearPairs(Edge[] blade, Edge[] spring)
    {
        Box[] springBoxes = [.. spring.Select(edge => edge.Bounds.Grown(NearMm))];
        Dictionary<(int, int), Nearest> near = [];
        for (int i = 0; i < blade.Length; i++)
        {
            Box box = blade[i].Bounds;
            for (int j = 0; j < spring.Length; j++)
            {
                if (!box.Touches(springBoxes[j]))
                {
                    continue;
                }

                Nearest nearest = Distance.Between(blade[i], spring[j]);
                if (nearest.DistanceMm <= NearMm)
                {
                    near[(i, j)] = nearest;
                }
            }
        }

        return near;
    }

    /// <summary>True unless the gap shrinks along a neighbouring edge, across the vertex where this pair is nearest.</summary>
    private static bool IsLeast(Edge[] blade, Edge[] spring, (int Blade, int Spring) pair, Nearest nearest)
    {
        Vector towardsSpring = NormalOf(blade[pair.Blade], spring[pair.Spring], nearest);
        return !Approaches(blade, pair.Blade, nearest.OnFirst, towardsSpring)
            && !Approaches(spring, pair.Spring, nearest.OnSecond, -towardsSpring);
    }

    private static bool Approaches(Edge[] edges, int index, Point at, Vector towardsOther)
    {
        int across = Across(edges, index, at);
        if (across == index)
        {
            return false;
        }

        bool leavesFromStart = at.IsWithin(SameMm, edges[across].Start);
        Vector away = leavesFromStart ? edges[across].TangentAt(0) : -edges[across].TangentAt(1);
        return away.Dot(towardsOther) > SameDirection;
    }

    /// <summary>The neighbour across the vertex at which a point lies; the edge itself where it lies inside.</summary>
    private static int Across(Edge[] edges, int index, Point at) =>
        at.IsWithin(SameMm, edges[index].Start) ? (index + edges.Length - 1) % edges.Length
        : at.IsWithin(SameMm, edges[index].End) ? (index + 1) % edges.Length
        : index;

    private Contact ToContact(
        Edge[] blade,
        Edge[] spring,
        (int Blade, int Spring) pair,
        Nearest nearest,
        Angle rotation
    )
    {
        Vector normal = NormalOf(blade[pair.Blade], spring[pair.Spring], nearest);
        int bladeVertex = VertexAt(blade, pair.Blade, nearest.OnFirst);
        int springVertex = VertexAt(spring, pair.Spring, nearest.OnSecond);
        return new Contact(
            nearest.OnFirst,
            normal,
            nearest.DistanceMm,
            faces.BladeFaceOf(pair.Blade, bladeVertex),
            faces.SpringFaceOf(pair.Spring, springVertex),
            LengthMm: 0,
            LiftPerDepth(nearest.OnFirst, normal, rotation)
        );
    }

    private static int VertexAt(Edge[] edges, int index, Point at) =>
        at.IsWithin(SameMm, edges[index].Start) ? index
        : at.IsWithin(SameMm, edges[index].End) ? (index + 1) % edges.Length
        : -1;

    private static Vector NormalOf(Edge blade, Edge spring, Nearest nearest)
    {
        if (nearest.DistanceMm > 1e-6)
        {
            return (nearest.OnSecond - nearest.OnFirst).Normalized;
        }

        // Touching: the edge that is met inside has a normal there; where both are met at an end, the spring's counts.
        bool insideBlade =
            !nearest.OnFirst.IsWithin(SameMm, blade.Start) && !nearest.OnFirst.IsWithin(SameMm, blade.End);
        return insideBlade ? OutwardAt(blade, nearest.OnFirst) : -OutwardAt(spring, nearest.OnSecond);
    }

    private static Vector OutwardAt(Edge edge, Point at)
    {
        if (!edge.IsArc)
        {
            return edge.Chord.Right.Normalized;
        }

        Vector outOfCircle = (at - edge.Centre).Normalized;
        return edge.Bulge > 0 ? outOfCircle : -outOfCircle;
    }

    /// <summary>Drop of the dial for a slice at a contact: its arm against the contact's, both about the centre pin.</summary>
    /// <remarks>Zero where the normal passes so near to the centre pin that the contact carries nothing.</remarks>
    private double LiftPerDepth(Point at, Vector normal, Angle rotation)
    {
        Vector dialArm = (knife.DialPoint - knife.CentrePin.Centre).Rotated(rotation);
        double lever = (at - knife.CentrePin.Centre).Cross(normal);
        return lever < 0.1 * dialArm.Length ? 0 : dialArm.X / lever;
    }

    private Contact ToContact(Edge[] blade, in ContactStretch stretch, Angle rotation)
    {
        Vector normal = blade[stretch.BladeEdge].Chord.Right.Normalized;
        return new Contact(
            stretch.Place,
            normal,
            stretch.LeastGapMm,
            stretch.IsPoint
                ? faces.BladeFaceOf(stretch.BladeEdge, VertexAt(blade, stretch.BladeEdge, stretch.Place))
                : faces.BladeFaceOf(stretch.BladeEdge),
            faces.SpringFaceOf(stretch.SpringEdge),
            stretch.IsPoint ? 0 : stretch.LengthMm,
            LiftPerDepth(stretch.Place, normal, rotation)
        );
    }

    private static void AddOnce(List<Contact> contacts, Contact contact)
    {
        if (!contacts.Exists(other => other.At.IsWithin(OnePlaceMm, contact.At)))
        {
            contacts.Add(contact);
        }
    }
}
