using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>Lists all places where blade and spring touch at a pose, and the nearest that do not.</summary>
internal sealed class ContactFinder(BenchSolver solver, FaceNaming faces, BenchSettings settings)
{
    // Two samples of one place reached through neighbouring stretches differ by rounding alone.
    private const double SamePlaceMm = 1e-6;
    private const double SameRotation = 1e-12;

    private readonly List<Touch> _supports = [];
    private readonly List<Touch> _ceilings = [];

    /// <summary>Contacts from rear to front, and near misses nearest first, with the spring at a rotation.</summary>
    public (List<Contact> Contacts, List<Contact> NearMisses) At(Angle bladeAngle, Angle rotation)
    {
        _supports.Clear();
        _ceilings.Clear();
        solver.CollectTouches(bladeAngle, rotation, _supports, _ceilings);

        List<Contact> contacts = [];
        List<Contact> nearMisses = [];
        foreach ((List<Touch> touches, double sign) in new[] { (_supports, 1.0), (_ceilings, -1.0) })
        {
            List<Contact> stretches = FaceContacts(touches, rotation, sign);
            contacts.AddRange(stretches);
            foreach (Touch touch in LocalExtremes(touches, sign))
            {
                Contact contact = ToContact(touch, rotation, sign, 0);
                if (stretches.Exists(stretch => Covers(stretch, contact.At)))
                {
                    continue;
                }

                AddOnce(contact.GapMm <= settings.ContactToleranceMm ? contacts : nearMisses, contact);
            }
        }

        contacts.Sort((a, b) => a.At.X.CompareTo(b.At.X));
        nearMisses.Sort((a, b) => a.GapMm.CompareTo(b.GapMm));
        return (contacts, nearMisses);
    }

    private Contact ToContact(in Touch touch, Angle rotation, double sign, double lengthMm)
    {
        SpringPose.Feature feature = new(touch, solver.Knife.CentrePin.Centre);
        double gap = sign * (rotation.Radians - touch.Rotation) * Math.Abs(feature.SpringLever);
        Vector dialArm = (solver.Knife.DialPoint - solver.Knife.CentrePin.Centre).Rotated(rotation);
        return new Contact(
            feature.At,
            feature.Normal,
            gap,
            faces.BladeFaceOf(feature.BladeEdge, feature.BladeVertex),
            faces.SpringFaceOf(feature.SpringEdge, feature.SpringVertex),
            lengthMm,
            dialArm.X / feature.SpringLever
        );
    }

    /// <summary>Samples that no neighbour along the same two boundaries beats.</summary>
    private static IEnumerable<Touch> LocalExtremes(List<Touch> touches, double sign)
    {
        List<(Touch Touch, bool Beaten)> judged = [];
        for (int i = 0; i < touches.Count; i++)
        {
            bool beaten = IsBeatenBy(i - 1) || IsBeatenBy(i + 1);
            judged.Add((touches[i], beaten));

            bool IsBeatenBy(int other) =>
                other >= 0
                && other < touches.Count
                && SameStretch(touches[i], touches[other])
                && sign * (touches[other].Rotation - touches[i].Rotation) > SameRotation;
        }

        // The same place seen from the stretch before and the stretch after: beaten once is beaten.
        return judged
            .GroupBy(sample => sample.Touch.RadiusMm)
            .SelectMany(group =>
                group.Where(sample => !group.Any(other => other.Beaten && SamePlace(sample.Touch, other.Touch)))
            )
            .Select(sample => sample.Touch);
    }

    private static bool SameStretch(in Touch a, in Touch b) =>
        a.Blade.EdgeIndex == b.Blade.EdgeIndex && a.Spring.EdgeIndex == b.Spring.EdgeIndex;

    private static bool SamePlace(in Touch a, in Touch b) =>
        Math.Abs(a.Rotation - b.Rotation) <= SameRotation && Math.Abs(a.BladePolar - b.BladePolar) <= SameRotation;

    /// <summary>Stretches along which two parallel lines lie within the contact tolerance of each other.</summary>
    private List<Contact> FaceContacts(List<Touch> touches, Angle rotation, double sign)
    {
        List<(Contact From, Contact To, int BladeEdge, int SpringEdge)> stretches = [];
        for (int i = 0; i + 1 < touches.Count; i++)
        {
            Touch from = touches[i];
            Touch to = touches[i + 1];
            if (from.Blade.IsArc || from.Spring.IsArc || !SameStretch(from, to) || to.RadiusMm <= from.RadiusMm)
            {
                continue;
            }

            Contact start = ToContact(from, rotation, sign, 0);
            Contact end = ToContact(to, rotation, sign, 0);
            if (Math.Max(start.GapMm, end.GapMm) > settings.ContactToleranceMm)
            {
                continue;
            }

            if (stretches.Count > 0 && stretches[^1].To.At.IsWithin(SamePlaceMm, start.At))
            {
                stretches[^1] = stretches[^1] with { To = end };
            }
            else
            {
                stretches.Add((start, end, from.Blade.EdgeIndex, from.Spring.EdgeIndex));
            }
        }

        return
        [
            .. stretches
                .Where(stretch => stretch.From.At.DistanceTo(stretch.To.At) > settings.FaceContactLengthMm)
                .Select(stretch =>
                    stretch.From with
                    {
                        At = stretch.From.At.MidpointTo(stretch.To.At),
                        GapMm = Math.Min(stretch.From.GapMm, stretch.To.GapMm),
                        LengthMm = stretch.From.At.DistanceTo(stretch.To.At),
                        BladeFace = faces.BladeFaceOf(stretch.BladeEdge),
                        SpringFace = faces.SpringFaceOf(stretch.SpringEdge),
                    }
                ),
        ];
    }

    private bool Covers(in Contact stretch, Point at) =>
        at.DistanceTo(stretch.At) <= (stretch.LengthMm / 2) + settings.FaceContactLengthMm;

    private static void AddOnce(List<Contact> contacts, in Contact contact)
    {
        Point at = contact.At;
        if (!contacts.Exists(other => other.At.IsWithin(SamePlaceMm, at)))
        {
            contacts.Add(contact);
        }
    }
}
