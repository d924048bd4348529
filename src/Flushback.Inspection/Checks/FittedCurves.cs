using Flushback.Dxf.Drawings;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Splines and ellipses, which many controllers cannot follow, with the number of arcs they become.</summary>
internal static class FittedCurves
{
    public static bool IsOne(DxfShape shape) => shape.TypeName is "SPLINE" or "ELLIPSE";

    public static IEnumerable<InspectionFinding> Of(IEnumerable<DxfShape> shapes) =>
        shapes.Where(IsOne).Select(FindingOf);

    private static InspectionFinding FindingOf(DxfShape shape)
    {
        int pieces = shape.Geometry switch
        {
            OpenChain chain => chain.Edges.Length,
            ClosedOutline closed => closed.Outline.Edges.Length,
            _ => 1,
        };
        return new InspectionFinding(
            InspectionCodes.CurveLeft,
            Severity.Warning,
            $"{shape.Label} on layer {shape.Layer} is no line or arc; it becomes {Said.Count(pieces, "arc or line", "arcs and lines")}.",
            "Send the repaired drawing, or export with arcs: many controllers cut such a curve as short lines, or not at all.",
            [EntityOrder.NameOf(shape)],
            shape.Layer,
            shape.Geometry switch
            {
                OpenChain chain => chain.Edges[0].Start,
                ClosedOutline closed => closed.Outline.Edges[0].Start,
                FullCircle full => full.Circle.Centre,
                _ => null,
            },
            pieces,
            0
        );
    }
}
