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

    // Two places closer than this are one, seen from two edges that share a vertex.
    private const double OnePlaceMm = 0.01;

    // Two lines that cross face each other over rounding only.
    private const double ShortestStretchMm = 1e-4;

    /// <summary>Contacts from rear to front, and near misses nearest first, with the spring at a rotation.</summary>
    public (List<Contact> Contacts, List<Contact> NearMisses) At(Angle bladeAngle, Angle rotation)
    {
        Edge[] blade = [.. knife.Blade.Edges.Select(Knife.BladeAt(bladeAngle).Apply)];
        Edge[] spring = [.. knife.Spring.Edges.Select(knife.SpringAt(rotation).Apply)];
        Dictionary<(int Blade, int Spring), Nearest> near = NearPairs(blade, spring);

        List<Contact> contacts = FaceContacts(near.Keys, blade, spring);
        List<Contact> nearMisses = [];
        foreach (((int i, int j), Nearest nearest) in near.OrderBy(pair => pair.Value.DistanceMm))
        {
            if (!IsLeast(near, blade, spring, (i, j), nearest) || contacts.Exists(c => Covers(c, nearest.OnFirst)))
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

    /// <summary>True unless a neighbouring edge, across the vertex where this pair is nearest, comes nearer still.</summary>
    private static bool IsLeast(
        Dictionary<(int Blade, int Spring), Nearest> near,
        Edge[] blade,
        Edge[] spring,
        (int Blade, int Spring) pair,
        Nearest nearest
    )
    {
        (int i, int j) = pair;
        int across = Across(blade, i, nearest.OnFirst);
        int acrossSpring = Across(spring, j, nearest.OnSecond);
        return !Beats((across, j)) && !Beats((i, acrossSpring)) && !Beats((across, acrossSpring));

        bool Beats((int, int) other) =>
            near.TryGetValue(other, out Nearest neighbour) && neighbour.DistanceMm < nearest.DistanceMm - SameMm;
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

    /// <summary>Stretches along which two lines lie within the contact tolerance of each other.</summary>
    private List<Contact> FaceContacts(IEnumerable<(int Blade, int Spring)> pairs, Edge[] blade, Edge[] spring)
    {
        List<(Point From, Point To, int Blade, int Spring)> stretches = [];
        foreach ((int i, int j) in pairs.OrderBy(pair => pair))
        {
            if (CommonStretch(blade[i], spring[j]) is not { } stretch)
            {
                continue;
            }

            int joined = stretches.FindIndex(other =>
                other.From.IsWithin(OnePlaceMm, stretch.To) || other.To.IsWithin(OnePlaceMm, stretch.From)
            );
            if (joined < 0)
            {
                stretches.Add((stretch.From, stretch.To, i, j));
                continue;
            }

            (Point From, Point To, int, int) other = stretches[joined];
            stretches[joined] = other.From.IsWithin(OnePlaceMm, stretch.To)
                ? (stretch.From, other.To, i, j)
                : (other.From, stretch.To, i, j);
        }

        return
        [
            .. stretches.Select(stretch => new Contact(
                stretch.From.MidpointTo(stretch.To),
                blade[stretch.Blade].Chord.Right.Normalized,
                0,
                faces.BladeFaceOf(stretch.Blade),
                faces.SpringFaceOf(stretch.Spring),
                stretch.From.DistanceTo(stretch.To),
                0
            )),
        ];
    }

    /// <summary>Where two nearly parallel lines face each other within tolerance all along, in the blade's direction.</summary>
    private (Point From, Point To)? CommonStretch(Edge blade, Edge spring)
    {
        if (blade.IsArc || spring.IsArc || blade.Chord.Dot(spring.Chord) >= 0)
        {
            return null;
        }

        Vector along = blade.Chord.Normalized;
        double from = Math.Max(0, (spring.End - blade.Start).Dot(along));
        double to = Math.Min(blade.Chord.Length, (spring.Start - blade.Start).Dot(along));
        if (to - from < ShortestStretchMm)
        {
            return null;
        }

        Point first = blade.Start + (along * from);
        Point last = blade.Start + (along * to);
        double gap = Math.Max(Distance.Between(first, spring).DistanceMm, Distance.Between(last, spring).DistanceMm);
        return gap <= settings.ContactToleranceMm ? (first, last) : null;
    }

    private static bool Covers(in Contact face, Point at) =>
        face.LengthMm > 0 && at.DistanceTo(face.At) <= (face.LengthMm / 2) + OnePlaceMm;

    private static void AddOnce(List<Contact> contacts, Contact contact)
    {
        if (!contacts.Exists(other => other.At.IsWithin(OnePlaceMm, contact.At)))
        {
            contacts.Add(contact);
        }
    }
}
