using System.Collections.Immutable;
using System.Globalization;
using Flushback.Patterns;
using Flushback.Reports.Print;

namespace Flushback.Reports.Templates;

/// <summary>A pattern 1:1 on paper: to be glued on steel, or to lay a finished piece on.</summary>
public static class TemplatePdf
{
    /// <summary>Writes the file; the same input gives the same bytes.</summary>
    /// <param name="name">What the maker calls the knife.</param>
    /// <param name="pattern">The pattern.</param>
    /// <param name="paper">The paper.</param>
    /// <param name="inInches">Whether lengths and the scale bar are in inches; in millimetres otherwise.</param>
    public static byte[] Write(string name, DrawnPattern pattern, Paper paper, bool inInches)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        TemplateDrawing drawing = new(pattern, TemplateLabels.Of(pattern, inInches));
        Tiling tiling = Tiling.Fewest(paper, drawing.Bounds);
        ImmutableArray<Tile> tiles = tiling.Tiles;
        return PdfFile.Write(name, [.. tiles.Select(tile => SheetOf(name, drawing, tile, inInches))]);
    }

    private static PrintSheet SheetOf(string name, TemplateDrawing drawing, Tile tile, bool inInches)
    {
        PrintSheet sheet = new(tile.Tiling.Format);
        sheet.Within(tile.Tiling.Window, window => drawing.DrawOn(window, tile.View));
        RegisterMarks.DrawOn(sheet, tile);
        string page = string.Create(
            CultureInfo.InvariantCulture,
            $"Sheet {tile.Number} of {tile.Tiling.Columns * tile.Tiling.Rows}"
        );
        TemplateFrame.DrawOn(sheet, tile, name, page, inInches);
        if (tile.Tiling.Columns * tile.Tiling.Rows > 1)
        {
            TilePlan.DrawOn(sheet, tile, drawing);
        }

        return sheet;
    }
}
