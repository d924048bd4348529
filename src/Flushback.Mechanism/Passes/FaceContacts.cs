using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes;

/// <summary>Which contacts count for a face: at which stops, on which faces.</summary>
internal sealed class FaceContacts
{
    // A contact of the underside presses upward: the cosine of its normal against that.
    private const double Upright = 0.7;

    private readonly ImmutableArray<Stop> _stops;
    private readonly Predicate<Contact> _counts;
    private readonly Part _part;

    private FaceContacts(Part part, ImmutableArray<Stop> stops, Predicate<Contact> counts) =>
        (_part, _stops, _counts) = (part, stops, counts);

    /// <summary>What counts for a face; null when it is none that is sliced.</summary>
    public static FaceContacts? Of(Site face) =>
        face.Spring is { } spring ? OfSpring(spring)
        : face.Blade is { } blade ? OfBlade(blade)
        : null;

    /// <summary>The contacts that count, in the frame of the part.</summary>
    public IEnumerable<DepthPlace> In(Knife knife, StopReadings readings)
    {
        foreach (StopReading reading in readings.Stops.Where(reading => _stops.Contains(reading.Stop)))
        {
            foreach (Contact contact in reading.Contacts.Where(contact => _counts(contact)))
            {
                foreach (DepthPlace place in PlacesOf(knife, reading, contact, _part))
                {
                    yield return place;
                }
            }
        }
    }

    /// <summary>A contact in the frame of a part, both ends of it when it is a face contact.</summary>
    public static IEnumerable<DepthPlace> PlacesOf(Knife knife, StopReading reading, Contact contact, Part part)
    {
        RigidMotion toPart =
            part == Part.Blade ? Knife.BladeAt(-reading.RestAngle) : knife.SpringAt(-reading.SpringRotation);
        Vector towardsPart = part == Part.Blade ? default : contact.Normal * contact.GapMm;
        Vector outward = toPart.Apply(part == Part.Blade ? contact.Normal : -contact.Normal);
        return contact.Ends.Select(end => new DepthPlace(toPart.Apply(end + towardsPart), outward, IsContact: true));
    }

    private static FaceContacts? OfBlade(BladeFace face) =>
        face switch
        {
            BladeFace.OpenFlat => OnBlade(Stop.Open, BladeFace.OpenFlat, BladeFace.OpenCorner),
            BladeFace.Shoulder => OnBlade(Stop.Open, BladeFace.Shoulder),
            BladeFace.HalfStopFace => OnBlade(
                Stop.HalfStop,
                BladeFace.OpenCorner,
                BladeFace.HalfStopFace,
                BladeFace.ClosedCorner
            ),
            BladeFace.ClosedFace => OnBlade(Stop.Closed, BladeFace.ClosedCorner, BladeFace.ClosedFace, BladeFace.Kick),
            _ => null,
        };

    private static FaceContacts? OfSpring(SpringFace face) =>
        face switch
        {
            SpringFace.Underside => new FaceContacts(
                Part.Spring,
                [Stop.Open, Stop.HalfStop, Stop.Closed],
                contact =>
                    contact.SpringFace is SpringFace.Underside or SpringFace.NoseCorner && contact.Normal.Y > Upright
            ),
            SpringFace.EndFace => new FaceContacts(
                Part.Spring,
                [Stop.Open],
                contact => contact.SpringFace == SpringFace.EndFace
            ),
            _ => null,
        };

    private static FaceContacts OnBlade(Stop stop, params ImmutableArray<BladeFace> faces) =>
        new(Part.Blade, [stop], contact => faces.Contains(contact.BladeFace));
}
