using Flushback.Dxf;
using Flushback.Geometry;
using Flushback.Reports.Print;

namespace Flushback.Reports.Templates;

/// <summary>What is on every sheet besides the drawing: title, scale bar, check square, and how to print it.</summary>
internal static class TemplateFrame
{
    private static readonly Stroke _line = new(0.15);
    private static readonly TextStyle _title = new(4, IsBold: true);
    private static readonly TextStyle _words = new(2.6);

    /// <summary>Left end of the scale bar.</summary>
    public static Point BarAt => new(Tiling.MarginMm + 1, Tiling.MarginMm + 14);

    /// <summary>Side of the check square, in millimetres.</summary>
    public static double SquareMm(bool inInches) => inInches ? DrawingUnits.InchMm : 25;

    /// <summary>The check square on a sheet.</summary>
    public static Box SquareOn(SheetFormat format, bool inInches)
    {
        double side = SquareMm(inInches);
        double right = format.WidthMm - Tiling.MarginMm - 1;
        return new Box(right - side, Tiling.MarginMm, right, Tiling.MarginMm + side);
    }

    public static void DrawOn(PrintSheet sheet, Tile tile, string name, string page, bool inInches)
    {
        double top = sheet.Format.HeightMm - Tiling.MarginMm - 4;
        sheet.Text(new Point(Tiling.MarginMm, top), Shortened(name, tile.Tiling.Window.WidthMm - 40), _title);
        sheet.Text(new Point(sheet.Format.WidthMm - Tiling.MarginMm, top), page, _words, TextAnchor.Right);

        ScaleBar bar = inInches ? ScaleBar.Inches : ScaleBar.Millimetres;
        bar.DrawOn(sheet, BarAt);
        string square = inInches ? "1 in" : "25 mm";
        sheet.Text(BarAt - new Vector(0, 5), "Print at 100 %, not fitted to the page.", _words);
        sheet.Text(
            BarAt - new Vector(0, 9),
            $"Measure bar ({bar.Label}) and square ({square}) before you cut.",
            _words
        );
        sheet.Rectangle(SquareOn(sheet.Format, inInches), _line);
        Point middle = SquareOn(sheet.Format, inInches).Centre;
        sheet.Text(middle - new Vector(0, 1), square, _words, TextAnchor.Middle);
    }

    private static string Shortened(string name, double widthMm)
    {
        string kept = name;
        while (kept.Length > 1 && PrintFonts.WidthMm(kept, _title) > widthMm)
        {
            kept = kept[..^2] + "\u2026";
        }

        return kept;
    }
}
