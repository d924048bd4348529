using Flushback.Dxf.Drawings;

namespace Flushback.Inspection.Checks;

/// <summary>That a drawing holds nothing that can be cut.</summary>
internal static class NothingToCut
{
    /// <param name="drawing">The drawing.</param>
    /// <param name="settings">Which layers were named.</param>
    /// <param name="isAll">True when no layer that is cut holds anything.</param>
    public static IEnumerable<InspectionFinding> In(DxfDrawing drawing, InspectionSettings settings, bool isAll)
    {
        string layers = string.Join(", ", drawing.Layers.Select(layer => layer.Name));
        if (isAll)
        {
            string which = settings.CutLayers.IsEmpty
                ? "No visible layer"
                : $"None of the layers named as cut ({string.Join(", ", settings.CutLayers)})";
            yield return Finding(
                Severity.Fault,
                $"{which} holds a line, an arc or a circle; the layers of the drawing are {layers}."
            );
            yield break;
        }

        foreach (string layer in settings.CutLayers.Where(layer => !drawing.ShapesOn(layer).Any()))
        {
            yield return Finding(
                Severity.Warning,
                $"Layer {layer}, named as cut, holds no line, arc or circle; the layers of the drawing are {layers}."
            ) with
            {
                Layer = layer,
            };
        }
    }

    private static InspectionFinding Finding(Severity severity, string message) =>
        new(InspectionCodes.NothingToCut, severity, message, "Switch the layer on, or name the one that is cut.", []);
}
