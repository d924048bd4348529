using System.Collections.Immutable;
using System.Globalization;
using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Inspection;
using Flushback.Reports.Sheets;

namespace Flushback.Reports.Pictures;

/// <summary>Marks where findings are: a dot at the place and a numbered disc beside it.</summary>
internal static class FindingMarks
{
    /// <summary>Most discs on one picture; findings come worst first, so the rest, as dots only, are the lesser ones.</summary>
    /// <remarks>What the list only counts has no number to show.</remarks>
    public const int MostNumbered = 60;

    private const double NumberRadius = 13;
    private const double LeaderLength = 30;

    // Tried in turn until a disc covers no other and stays on the sheet; then farther out.
    private const int Directions = 12;
    private const int MostRings = 8;

    public static IEnumerable<XElement> Of(ImmutableArray<InspectionFinding> findings, Pane pane)
    {
        List<Point> taken = [];
        HashSet<int> listed = [.. ListedFindings.Of(findings)];
        for (int i = 0; i < findings.Length; i++)
        {
            if (findings[i].At is not { } place)
            {
                continue;
            }

            Point at = pane.At(place);
            if (listed.Contains(i) && taken.Count < MostNumbered && FreePlace(at, taken, pane.Sheet) is { } disc)
            {
                taken.Add(disc);
                yield return Svg.Line(Ink.ContactLine, at, disc);
                yield return Svg.Disc(Ink.Contact, disc, NumberRadius);
                yield return Svg.Words(
                    Ink.ContactNumber,
                    disc + new Vector(0, 5.5),
                    15,
                    (i + 1).ToString(CultureInfo.InvariantCulture),
                    "middle"
                );
            }

            yield return Svg.Disc(Ink.Contact, at, 4.5);
        }
    }

    private static Point? FreePlace(Point at, List<Point> taken, Box sheet)
    {
        Box inside = sheet.Grown(-NumberRadius - 1);
        for (int ring = 0; ring < MostRings; ring++)
        {
            double reach = LeaderLength + (ring * 2 * NumberRadius);
            for (int step = 0; step < Directions; step++)
            {
                // Up and to the right first, then round.
                Angle direction = Angle.FromDegrees(-60 + (step * 360.0 / Directions));
                Point disc = at + (new Vector(1, 0).Rotated(direction) * reach);
                if (inside.Contains(disc) && !taken.Exists(other => other.IsWithin((2 * NumberRadius) + 2, disc)))
                {
                    return disc;
                }
            }
        }

        return null;
    }
}
