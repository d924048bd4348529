using System.Collections.Immutable;
using Flushback.Dxf.Drawings;

namespace Flushback.Inspection.Contours;

/// <summary>Which layers of a drawing are cut.</summary>
internal static class CutLayers
{
    /// <summary>What the names of the layers that this program draws begin with; nobody cuts those.</summary>
    private const string OwnPrefix = "FLUSHBACK_";

    /// <summary>The layers that were asked for and exist, or all that may be cut, as the file spells them, in its order.</summary>
    public static ImmutableArray<string> Of(DxfDrawing drawing, InspectionSettings settings)
    {
        HashSet<string> drawnOn = new(drawing.Shapes.Select(shape => shape.Layer), StringComparer.OrdinalIgnoreCase);
        drawnOn.UnionWith(drawing.LayerFaults.Select(fault => fault.Layer ?? ""));
        HashSet<string> asked = new(settings.CutLayers, StringComparer.OrdinalIgnoreCase);
        return
        [
            .. drawing
                .Layers.Select(layer => layer.Name)
                .Where(name =>
                    asked.Count > 0 ? asked.Contains(name) : drawnOn.Contains(name) && MayBeCut(name, settings)
                ),
        ];
    }

    private static bool MayBeCut(string layer, InspectionSettings settings) =>
        !layer.StartsWith(OwnPrefix, StringComparison.OrdinalIgnoreCase)
        && !string.Equals(layer, settings.FinishedLayer, StringComparison.OrdinalIgnoreCase);
}
