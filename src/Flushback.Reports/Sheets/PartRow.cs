using System.Globalization;
using Flushback.Geometry;
using Flushback.Inspection;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>A part in a row of each unit.</summary>
internal sealed record PartRow
{
    public required string Number { get; init; }

    public required string Layer { get; init; }

    public required string Holes { get; init; }

    public required string SizeMm { get; init; }

    public required string SizeInches { get; init; }

    public required string CutMm { get; init; }

    public required string CutInches { get; init; }

    public required string AreaMm2 { get; init; }

    public required string AreaSquareInches { get; init; }

    public static PartRow Of(InspectedPart part, int number, Measure measure)
    {
        Box box = part.Contour.Bounds;
        return new PartRow
        {
            Number = number.ToString(CultureInfo.InvariantCulture),
            Layer = Printable.Of(part.Layer),
            Holes = part.Holes.Length.ToString(CultureInfo.InvariantCulture),
            SizeMm = measure.MmByMm(box),
            SizeInches = measure.InchesByInches(box),
            CutMm = measure.Mm(part.CutLengthMm, 1),
            CutInches = measure.Inches(part.CutLengthMm, 2),
            AreaMm2 = measure.Number(part.AreaMm2, 1),
            AreaSquareInches = measure.SquareInches(part.AreaMm2),
        };
    }
}
