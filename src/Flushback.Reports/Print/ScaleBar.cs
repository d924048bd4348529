using Flushback.Geometry;

namespace Flushback.Reports.Print;

/// <summary>A ruler on paper, with which a rule shows whether the sheet was printed at its size.</summary>
/// <param name="Label">What is written at its right end: <c>100 mm</c>.</param>
/// <param name="LengthMm">Length between the outer edges of its two end ticks' middles, in millimetres on paper.</param>
/// <param name="Divisions">Into how many equal parts ticks divide it.</param>
/// <param name="LongEvery">Every how manieth tick is long.</param>
public sealed record ScaleBar(string Label, double LengthMm, int Divisions, int LongEvery)
{
    private static readonly Stroke _line = new(0.15);
    private static readonly TextStyle _words = new(2.8);

    private const double ShortTickMm = 1.5;
    private const double LongTickMm = 3;
    private const double WordsGapMm = 2;

    /// <summary>Ten centimetres, in fives of millimetres.</summary>
    public static ScaleBar Millimetres { get; } = new("100 mm", 100, 20, 2);

    /// <summary>Four inches, in eighths.</summary>
    public static ScaleBar Inches { get; } = new("4 in", 4 * Dxf.DrawingUnits.InchMm, 32, 8);

    /// <summary>Draws it.</summary>
    /// <param name="sheet">The sheet it is drawn on.</param>
    /// <param name="at">Its left end.</param>
    public void DrawOn(PrintSheet sheet, Point at)
    {
        ArgumentNullException.ThrowIfNull(sheet);
        sheet.Line(at, at + new Vector(LengthMm, 0), _line);
        for (int i = 0; i <= Divisions; i++)
        {
            Point foot = at + new Vector(LengthMm * i / Divisions, 0);
            sheet.Line(foot, foot + new Vector(0, i % LongEvery == 0 ? LongTickMm : ShortTickMm), _line);
        }

        sheet.Text(at + new Vector(LengthMm + WordsGapMm, 0), Label, _words);
    }
}
