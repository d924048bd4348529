using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Dxf.Drawings;
using Flushback.Geometry;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection;

/// <summary>Guesses the unit of a drawing that states none from its size, for a caller who asks for that.</summary>
/// <remarks>
/// Of the units makers draw in, the commonest first, the first one is taken in which the longer side of what is cut is
/// as long as knife parts or a sheet of them may be.
/// </remarks>
public static class UnitGuess
{
    // From the spring of a small knife to a sheet of parts on a common table: common practice, no source.
    private static readonly PlausibleSize _likely = new(20, 1250);

    private static readonly DrawingUnit[] _units =
    [
        DrawingUnit.Millimetre,
        DrawingUnit.Inch,
        DrawingUnit.Centimetre,
        DrawingUnit.Thou,
        DrawingUnit.Metre,
    ];

    /// <summary>The likeliest unit.</summary>
    /// <param name="bare">The drawing read in millimetres, so that its numbers are those of the file.</param>
    /// <param name="cutLayers">The layers that are cut; empty for all.</param>
    /// <returns>The unit; null when the drawing has no size that any unit makes plausible.</returns>
    public static DrawingUnit? Of(DxfDrawing bare, ImmutableArray<string> cutLayers)
    {
        ArgumentNullException.ThrowIfNull(bare);
        DxfDrawing cut = cutLayers.IsDefaultOrEmpty
            ? bare
            : bare with
            {
                Shapes =
                [
                    .. bare.Shapes.Where(shape => cutLayers.Contains(shape.Layer, StringComparer.OrdinalIgnoreCase)),
                ],
            };
        Box box = cut.Bounds;
        double longer = Math.Max(box.WidthMm, box.HeightMm);
        foreach (DrawingUnit unit in _units)
        {
            if (_likely.Holds(longer * unit.Millimetres()))
            {
                return unit;
            }
        }

        return null;
    }

    /// <summary>The report of a drawing whose unit was guessed, with the finding that says so.</summary>
    public static InspectionReport Told(InspectionReport report)
    {
        ArgumentNullException.ThrowIfNull(report);
        ImmutableArray<InspectionFinding> findings = report.Findings;
        int place = findings.TakeWhile(finding => finding.Severity > Severity.Warning).Count();
        return report with { Findings = findings.Insert(place, FindingOf(report)) };
    }

    private static InspectionFinding FindingOf(InspectionReport report) =>
        new(
            InspectionCodes.UnitGuessed,
            Severity.Warning,
            $"The drawing does not say its unit; by its size it was taken to be in {UnitPlausibility.NameOf(report.Unit)}, which makes what is cut {Said.Size(report.Bounds)} large.",
            "Measure one length you know; then give the unit, or set it in the drawing.",
            []
        );
}
