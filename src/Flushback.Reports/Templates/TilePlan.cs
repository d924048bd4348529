using System.Globalization;
using Flushback.Geometry;
using Flushback.Reports.Print;

namespace Flushback.Reports.Templates;

/// <summary>A small plan of all sheets, this one grey.</summary>
internal static class TilePlan
{
    private const double MostWidthMm = 45;
    private const double MostHeightMm = 24;
    private const double FromRightMm = 32;

    private static readonly Stroke _sheet = new(0.1, PrintColour.Grey(110));
    private static readonly Stroke _piece = new(0.1);
    private static readonly Fill _here = new(PrintColour.Grey(215));
    private static readonly TextStyle _number = new(2.4, Colour: PrintColour.Grey(110));

    public static void DrawOn(PrintSheet sheet, Tile tile, TemplateDrawing drawing)
    {
        Tiling tiling = tile.Tiling;
        Box all = tiling.Tiles.Aggregate(Box.Empty, (box, other) => box.Including(tiling.Shown(other)));
        double scale = Math.Min(MostWidthMm / all.WidthMm, MostHeightMm / all.HeightMm);
        Point corner = new(
            sheet.Format.WidthMm - Tiling.MarginMm - FromRightMm - (all.WidthMm * scale),
            Tiling.MarginMm
        );
        PaperView view = new(new Point(all.MinX, all.MinY), corner, scale);
        sheet.Rectangle(On(view, tiling.Shown(tile)), null, _here);
        foreach (Tile other in tiling.Tiles)
        {
            Box box = On(view, tiling.Shown(other));
            sheet.Rectangle(box, _sheet);
            string number = other.Number.ToString(CultureInfo.InvariantCulture);
            sheet.Text(new Point(box.MinX + 0.8, box.MaxY - 2.6), number, _number);
        }

        drawing.DrawPlan(sheet, view, _piece);
    }

    private static Box On(PaperView view, Box box)
    {
        Point low = view.Of(new Point(box.MinX, box.MinY));
        Point high = view.Of(new Point(box.MaxX, box.MaxY));
        return new Box(low.X, low.Y, high.X, high.Y);
    }
}
