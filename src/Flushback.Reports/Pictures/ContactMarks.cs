using System.Globalization;
using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Pictures;

/// <summary>Marks the contacts of a stop: a dot at the place, the common normal into the spring, a numbered disc at its end.</summary>
internal static class ContactMarks
{
    private const double NumberRadius = 15;
    private const double NormalLength = 58;

    public static IEnumerable<XElement> Of(BenchReport report, StopReading reading, Pane pane)
    {
        int number = ContactNumbers.FirstAt(report, reading.Stop);
        var numbered = new List<Point>();
        foreach (Contact contact in reading.Contacts)
        {
            Point at = pane.At(contact.At);
            Vector along = Pane.Along(contact.Normal);
            Point disc = FreePlace(at, along, numbered);
            numbered.Add(disc);
            foreach (XElement element in Mark(contact, at, along, disc, number, pane.Scale))
            {
                yield return element;
            }

            number++;
        }
    }

    private static IEnumerable<XElement> Mark(
        Contact contact,
        Point at,
        Vector along,
        Point disc,
        int number,
        double scale
    )
    {
        if (contact.LengthMm > 0)
        {
            Vector half = along.Left * (contact.LengthMm * scale / 2);
            yield return Svg.Line(Ink.FaceContact, at - half, at + half);
        }

        yield return Svg.Line(Ink.ContactLine, at, disc);
        yield return Svg.Disc(Ink.Contact, at, 6);
        yield return Svg.Disc(Ink.Contact, disc, NumberRadius);
        yield return Svg.Words(
            Ink.ContactNumber,
            disc + new Vector(0, 6.5),
            18,
            number.ToString(CultureInfo.InvariantCulture),
            "middle"
        );
    }

    // Numbers of contacts that lie close together move out along their normals until none covers another.
    private static Point FreePlace(Point at, Vector along, List<Point> taken)
    {
        Point place = at + (along * NormalLength);
        while (taken.Any(other => other.IsWithin((2 * NumberRadius) + 2, place)))
        {
            place += along * NumberRadius;
        }

        return place;
    }
}
