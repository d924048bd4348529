using System.Collections.Immutable;
using Flushback.Dxf.Chaining;
using Flushback.Geometry;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Cutting;

/// <summary>Parts that may as well be holes, since they lie where a contour does not close.</summary>
internal static class UnknownSides
{
    /// <summary>Which of the parts lie within the box of a chain that does not close.</summary>
    public static ImmutableArray<int> Of(
        ImmutableArray<MetalPart> parts,
        ImmutableArray<(string Layer, OpenPath Path)> open
    )
    {
        Box[] around = [.. open.Select(entry => entry.Path.Edges.Aggregate(Box.Empty, With))];
        return
        [
            .. Enumerable
                .Range(0, parts.Length)
                .Where(i => around.Any(box => box.Including(parts[i].Outer.Outline.Bounds) == box)),
        ];

        static Box With(Box box, Edge edge) => box.Including(edge.Bounds);
    }

    /// <summary>Why a part has no cut path.</summary>
    public static InspectionFinding FindingOf(MetalPart part)
    {
        Point at = part.Outer.Outline.Bounds.Centre;
        return new InspectionFinding(
            InspectionCodes.SideUnknown,
            Severity.Warning,
            $"{Sentence.Begin(part.Outer.Label)} at {Said.At(at)} lies where a contour does not close, so it cannot be told whether "
                + "the metal is inside or outside; it has no cut path.",
            "Close the contour around it and inspect again.",
            part.Outer.Handles,
            part.Outer.Layer,
            at
        );
    }
}
