using Flushback.Dxf;
using Flushback.Geometry;

namespace Flushback.Reports.Print;

/// <summary>A paper, and which way it is turned.</summary>
/// <param name="Paper">Its size; <c>default</c> is A4 upright.</param>
/// <param name="IsLandscape">Whether the long side lies along the foot of the sheet.</param>
public readonly record struct SheetFormat(Paper Paper, bool IsLandscape = false)
{
    /// <summary>Length of the foot, in millimetres.</summary>
    public double WidthMm => IsLandscape ? LongSideMm : ShortSideMm;

    /// <summary>Height of the sheet, in millimetres.</summary>
    public double HeightMm => IsLandscape ? ShortSideMm : LongSideMm;

    /// <summary>The whole sheet in its own frame: millimetres from the lower left corner, y up.</summary>
    public Box Area => new(0, 0, WidthMm, HeightMm);

    private double ShortSideMm => Paper == Paper.A4 ? 210 : 8.5 * DrawingUnits.InchMm;

    private double LongSideMm => Paper == Paper.A4 ? 297 : 11 * DrawingUnits.InchMm;
}
