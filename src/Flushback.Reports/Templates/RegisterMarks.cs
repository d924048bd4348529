using Flushback.Geometry;
using Flushback.Reports.Print;

namespace Flushback.Reports.Templates;

/// <summary>What neighbouring sheets share, so that they can be laid one on the other: crosses in circles, and the seam.</summary>
internal static class RegisterMarks
{
    private const double ReachMm = 5;
    private const double RadiusMm = 2.5;

    private static readonly Stroke _line = new(0.1);
    private static readonly Stroke _seam = new(0.1, PrintColour.Grey(120)) { DashesMm = [4, 2] };

    /// <summary>Draws the seams and marks that a sheet shares with others.</summary>
    public static void DrawOn(PrintSheet sheet, Tile tile)
    {
        Tiling tiling = tile.Tiling;
        Box shown = tiling.Shown(tile);
        foreach (int column in Behind(tile.Column, tiling.Columns))
        {
            double x = tiling.SeamX(column);
            sheet.Line(tile.View.Of(new Point(x, shown.MinY)), tile.View.Of(new Point(x, shown.MaxY)), _seam);
        }

        foreach (int row in Behind(tile.Row, tiling.Rows))
        {
            double y = tiling.SeamY(row);
            sheet.Line(tile.View.Of(new Point(shown.MinX, y)), tile.View.Of(new Point(shown.MaxX, y)), _seam);
        }

        foreach (Point place in On(tile))
        {
            DrawMark(sheet, tile.View.Of(place));
        }
    }

    /// <summary>Where the marks of a sheet are, in millimetres of the drawing.</summary>
    public static IEnumerable<Point> On(Tile tile)
    {
        Tiling tiling = tile.Tiling;
        Box shown = tiling.Shown(tile);
        foreach (int column in Behind(tile.Column, tiling.Columns))
        {
            yield return new Point(tiling.SeamX(column), shown.MinY + (shown.HeightMm / 4));
            yield return new Point(tiling.SeamX(column), shown.MaxY - (shown.HeightMm / 4));
        }

        foreach (int row in Behind(tile.Row, tiling.Rows))
        {
            yield return new Point(shown.MinX + (shown.WidthMm / 4), tiling.SeamY(row));
            yield return new Point(shown.MaxX - (shown.WidthMm / 4), tiling.SeamY(row));
        }
    }

    // The seams on both sides of a place in a line of several.
    private static IEnumerable<int> Behind(int place, int count) =>
        new[] { place - 1, place }.Where(seam => seam >= 0 && seam < count - 1);

    private static void DrawMark(PrintSheet sheet, Point at)
    {
        sheet.Circle(new Circle(at, RadiusMm), _line);
        sheet.Line(at - new Vector(ReachMm, 0), at + new Vector(ReachMm, 0), _line);
        sheet.Line(at - new Vector(0, ReachMm), at + new Vector(0, ReachMm), _line);
    }
}
