using Flushback.Geometry;
using Flushback.Geometry.Removal;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes;

/// <summary>A place at which the depth of a slice counts, in the frame of the part (blade open, spring as drawn).</summary>
/// <param name="At">The place, on the outline.</param>
/// <param name="Normal">Unit direction out of the metal along which the depth counts.</param>
/// <param name="IsContact">True for a contact, false for an end of the face.</param>
public readonly record struct DepthPlace(Point At, Vector Normal, bool IsContact);

/// <summary>The two places of a face at which the depths of a slice count.</summary>
/// <remarks>
/// <para>
/// They are the outermost contacts on the face and its corners at the stop it serves: open flat and shoulder open,
/// half-stop face at the half stop, closed face (with the kick) closed; end face open; underside at all stops.
/// </para>
/// <para>
/// With one contact, or several closer together than <see cref="OnePlaceMm"/>, the other place is the end of the face
/// farther from it. With none, both ends of the face are meant. At an end the depth counts square to the line between the
/// two places. Shoulder and end face stand upright: there the front is the upper place, the rear the lower one.
/// </para>
/// </remarks>
/// <param name="Front">Where the front depth counts.</param>
/// <param name="Rear">Where the rear depth counts.</param>
public readonly record struct DepthPlaces(DepthPlace Front, DepthPlace Rear)
{
    /// <summary>Contacts closer together than this count as one.</summary>
    public const double OnePlaceMm = 0.5;

    /// <summary>The places of a face of a knife as it reads.</summary>
    /// <returns>Null when the knife has no such face, or it is none that is sliced.</returns>
    public static DepthPlaces? Of(Knife knife, StopReadings readings, Site face) =>
        Stretch.Of(Workpiece.Of(knife, face.Part), knife, readings, face)?.Places;

    /// <summary>The places in order of travel along the outline.</summary>
    internal readonly record struct Stretch(
        DepthPlace First,
        DepthPlace Last,
        OutlinePlace From,
        OutlinePlace To,
        bool FrontIsFirst
    )
    {
        public DepthPlaces Places => FrontIsFirst ? new DepthPlaces(First, Last) : new DepthPlaces(Last, First);

        public static Stretch? Of(Workpiece piece, Knife knife, StopReadings readings, Site face)
        {
            if (FaceContacts.Of(face) is not { } served || piece.RunOf(face) is not { } run)
            {
                return null;
            }

            List<(double Along, OutlinePlace Place, DepthPlace Depth)> contacts = [];
            foreach (DepthPlace depth in served.In(knife, readings))
            {
                OutlinePlace place = OutlinePlace.Nearest(piece.Outline, depth.At);
                contacts.Add((AlongFrom(piece, run, place), place, depth with { At = place.On(piece.Outline) }));
            }

            contacts.Sort((a, b) => a.Along.CompareTo(b.Along));
            (OutlinePlace start, OutlinePlace end) = EndsOf(piece, face, run);
            Point startsAt = start.On(piece.Outline);
            Point endsAt = end.On(piece.Outline);
            Vector square = (endsAt - startsAt).Right.Normalized;
            DepthPlace first = new(startsAt, square, IsContact: false);
            DepthPlace last = new(endsAt, square, IsContact: false);
            bool frontIsFirst = face.Part == Part.Blade;
            if (contacts.Count == 0)
            {
                return new Stretch(first, last, start, end, frontIsFirst);
            }

            var (foremost, hindmost) = (contacts[0], contacts[^1]);
            if (foremost.Depth.At.DistanceTo(hindmost.Depth.At) > OnePlaceMm)
            {
                return new Stretch(foremost.Depth, hindmost.Depth, foremost.Place, hindmost.Place, frontIsFirst);
            }

            bool isNearStart = foremost.Depth.At.DistanceTo(startsAt) <= foremost.Depth.At.DistanceTo(endsAt);
            return isNearStart
                ? new Stretch(
                    foremost.Depth,
                    last with
                    {
                        Normal = (endsAt - foremost.Depth.At).Right.Normalized,
                    },
                    foremost.Place,
                    end,
                    frontIsFirst
                )
                : new Stretch(
                    first with
                    {
                        Normal = (hindmost.Depth.At - startsAt).Right.Normalized,
                    },
                    hindmost.Depth,
                    start,
                    hindmost.Place,
                    frontIsFirst
                );
        }

        /// <summary>Order of places along the outline, counted from opposite the face, so that its corners keep their sides.</summary>
        private static double AlongFrom(Workpiece piece, FaceRun run, OutlinePlace place)
        {
            int opposite = run.First + (run.Count / 2) - (piece.Count / 2);
            return piece.Around(place.EdgeIndex - opposite) + place.Fraction;
        }

        /// <summary>Both ends of the edges that bear the name; of the underside only the stretch at the nose is a face.</summary>
        private static (OutlinePlace Start, OutlinePlace End) EndsOf(Workpiece piece, Site face, FaceRun run)
        {
            int first = face.Spring == SpringFace.Underside ? run.Last : run.First;
            return (new OutlinePlace(piece.Around(first), 0), new OutlinePlace(piece.Around(run.Last), 1));
        }
    }
}
