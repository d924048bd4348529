using Flushback.Geometry;
using Flushback.Geometry.Distances;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>Lists all places where blade and spring touch at a pose, and the nearest that do not.</summary>
/// <remarks>
/// Every edge of the blade is held against every edge of the spring; a pair counts where its distance is least among
/// its neighbours along both outlines, so that the vertex of a face that has been split is no contact of its own.
/// </remarks>
internal sealed class ContactFinder(
    Knife knife,
    FaceNaming faces,
    BenchSettings settings,
    CancellationToken cancellation = default
)
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
        Edge[] blade = EdgesOf(knife.Blade, Knife.BladeAt(bladeAngle));
        Edge[] spring = EdgesOf(knife.Spring, knife.SpringAt(rotation));
        List<NearPlace> near = NearPlaces(blade, spring);

        List<ContactStretch> stretches = ContactStretch.AllOf(
            WholePairs(near).Select(pair => (pair, blade[pair.Blade], spring[pair.Spring])),
            settings.ContactToleranceMm
        );
        stretches.RemoveAll(stretch => stretch.IsPoint && !IsLeast(blade, spring, stretch));
        List<Contact> contacts = [.. stretches.Select(stretch => ToContact(blade, stretch, rotation))];
        List<Contact> nearMisses = [];
        foreach ((_, (int, int) pair, Nearest nearest) in near.OrderBy(place => place.Nearest.DistanceMm))
        {
            cancellation.ThrowIfCancellationRequested();
            if (IsLeast(blade, spring, pair, nearest) && !stretches.Exists(stretch => stretch.Covers(nearest.OnFirst)))
            {
                bool touches = nearest.DistanceMm <= settings.ContactToleranceMm;
                AddOnce(touches ? contacts : nearMisses, ToContact(blade, spring, pair, nearest, rotation));
            }
        }

        contacts.Sort((a, b) => a.At.X.CompareTo(b.At.X));
        return (contacts, nearMisses);
    }

    private static Edge[] EdgesOf(Outline outline, RigidMotion motion)
    {
        Edge[] edges = new Edge[outline.Edges.Length];
        motion.Apply(outline.Edges.AsSpan(), edges);
        return edges;
    }

    private IEnumerable<(int Blade, int Spring)> WholePairs(List<NearPlace> near)
    {
        foreach (NearPlace place in near)
        {
            cancellation.ThrowIfCancellationRequested();
            if (place.IsWholePair)
            {
                yield return place.Pair;
            }
        }
    }

    /// <summary>A place where two edges come near: the nearest of all, or where one of their four ends is nearest.</summary>
    private readonly record struct NearPlace(bool IsWholePair, (int Blade, int Spring) Pair, Nearest Nearest);

    /// <summary>
    /// Where each two edges are nearest, and where each of their ends is: between two shallow curves the gap may be
    /// least at an end and inside as well.
    /// </summary>
    private List<NearPlace> NearPlaces(Edge[] blade, Edge[] spring)
    {
        Box[] springBoxes = [.. spring.Select(edge => edge.Bounds.Grown(NearMm))];
        List<NearPlace> places = [];
        for (int i = 0; i < blade.Length; i++)
        {
            cancellation.ThrowIfCancellationRequested();
            Box box = blade[i].Bounds;
            for (int j = 0; j < spring.Length; j++)
            {
                if (!box.Touches(springBoxes[j]))
                {
                    continue;
                }

                Add(true, Distance.Between(blade[i], spring[j]));
                Add(false, Distance.Between(blade[i].Start, spring[j]));
                Add(false, Distance.Between(blade[i].End, spring[j]));
                Add(false, Distance.Between(spring[j].Start, blade[i]).Swapped);
                Add(false, Distance.Between(spring[j].End, blade[i]).Swapped);

                void Add(bool isWholePair, Nearest nearest)
                {
                    if (nearest.DistanceMm <= NearMm)
                    {
                        places.Add(new NearPlace(isWholePair, (i, j), nearest));
                    }
                }
            }
        }

        return places;
    }

    /// <summary>True unless the gap shrinks along an edge that leaves the place where this pair is near.</summary>
    private static bool IsLeast(Edge[] blade, Edge[] spring, (int Blade, int Spring) pair, Nearest nearest)
    {
        Vector towardsSpring = NormalOf(blade[pair.Blade], spring[pair.Spring], nearest);
        return !Approaches(blade, pair.Blade, nearest.OnFirst, towardsSpring)
            && !Approaches(spring, pair.Spring, nearest.OnSecond, -towardsSpring);
    }

    /// <summary>True unless a flat that ends in a round comes nearer still on the round.</summary>
    private static bool IsLeast(Edge[] blade, Edge[] spring, in ContactStretch stretch)
    {
        Vector towardsSpring = spring[stretch.SpringEdge].Chord.Left.Normalized;
        return !Approaches(blade, stretch.BladeEdge, stretch.Place, towardsSpring)
            && !Approaches(
                spring,
                stretch.SpringEdge,
                stretch.Place + (towardsSpring * stretch.LeastGapMm),
                -towardsSpring
            );
    }

    private static bool Approaches(Edge[] edges, int index, Point at, Vector towardsOther)
    {
        int vertex = VertexAt(edges, index, at);
        if (vertex < 0)
        {
            return false;
        }

        Vector onwards = edges[vertex].TangentAt(0);
        Vector back = -edges[(vertex + edges.Length - 1) % edges.Length].TangentAt(1);
        return onwards.Dot(towardsOther) > SameDirection || back.Dot(towardsOther) > SameDirection;
    }

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
