using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Reports.Print;

namespace Flushback.Reports.Templates;

/// <summary>A drawing spread 1:1 over sheets that overlap, rows from the top, columns from the left.</summary>
/// <param name="Format">The paper of every sheet.</param>
/// <param name="Columns">Sheets side by side.</param>
/// <param name="Rows">Sheets one below another.</param>
/// <param name="Window">Where on a sheet the drawing is seen, in millimetres of the sheet.</param>
/// <param name="Content">What is to be seen, in millimetres of the drawing.</param>
public sealed record Tiling(SheetFormat Format, int Columns, int Rows, Box Window, Box Content)
{
    /// <summary>By how much neighbours overlap, in millimetres: room for a register mark, and for glue or tape.</summary>
    public const double OverlapMm = 16;

    /// <summary>Margin that no usual printer needs to print on (common practice, no source).</summary>
    public const double MarginMm = 10;

    /// <summary>Room above the window for the title.</summary>
    public const double HeadMm = 8;

    /// <summary>Room below the window for scale bar, check square and plan of the sheets.</summary>
    public const double FootMm = 32;

    /// <summary>The sheets, in the order of reading.</summary>
    public ImmutableArray<Tile> Tiles =>
        [
            .. Enumerable
                .Range(0, Rows)
                .SelectMany(row => Enumerable.Range(0, Columns).Select(column => new Tile(this, column, row))),
        ];

    private double StepX => Window.WidthMm - OverlapMm;

    private double StepY => Window.HeightMm - OverlapMm;

    /// <summary>The fewest sheets of a paper that hold a drawing; upright where both ways take as many.</summary>
    public static Tiling Fewest(Paper paper, Box content)
    {
        Tiling upright = Over(new SheetFormat(paper), content);
        Tiling across = Over(new SheetFormat(paper, IsLandscape: true), content);
        return across.Columns * across.Rows < upright.Columns * upright.Rows ? across : upright;
    }

    /// <summary>What a sheet shows, in millimetres of the drawing.</summary>
    public Box Shown(Tile tile)
    {
        ArgumentNullException.ThrowIfNull(tile);
        double left = Content.MinX + (tile.Column * StepX);
        double top = Content.MaxY - (tile.Row * StepY);
        return new Box(left, top - Window.HeightMm, left + Window.WidthMm, top);
    }

    /// <summary>Middle of the overlap behind a column; sheets are joined along it.</summary>
    public double SeamX(int column) => Content.MinX + ((column + 1) * StepX) + (OverlapMm / 2);

    /// <summary>Middle of the overlap below a row.</summary>
    public double SeamY(int row) => Content.MaxY - ((row + 1) * StepY) - (OverlapMm / 2);

    private static Tiling Over(SheetFormat format, Box content)
    {
        Box window = new(MarginMm, MarginMm + FootMm, format.WidthMm - MarginMm, format.HeightMm - MarginMm - HeadMm);
        return new Tiling(
            format,
            CountFor(content.WidthMm, window.WidthMm),
            CountFor(content.HeightMm, window.HeightMm),
            window,
            content
        );
    }

    private static int CountFor(double lengthMm, double windowMm) =>
        Math.Max(1, (int)Math.Ceiling((lengthMm - OverlapMm) / (windowMm - OverlapMm)));
}

/// <summary>One sheet of a tiling.</summary>
/// <param name="Tiling">The tiling it belongs to.</param>
/// <param name="Column">Its place from the left, from 0.</param>
/// <param name="Row">Its place from the top, from 0.</param>
public sealed record Tile(Tiling Tiling, int Column, int Row)
{
    /// <summary>Its number, from 1, in the order of reading.</summary>
    public int Number => (Row * Tiling.Columns) + Column + 1;

    /// <summary>From the drawing to the sheet, 1:1.</summary>
    public PaperView View
    {
        get
        {
            Box shown = Tiling.Shown(this);
            return new PaperView(new Point(shown.MinX, shown.MinY), new Point(Tiling.Window.MinX, Tiling.Window.MinY));
        }
    }
}
