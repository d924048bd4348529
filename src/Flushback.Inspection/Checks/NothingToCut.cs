using Flushback.Dxf.Drawings;

namespace Flushback.Inspection.Checks;

/// <summary>That a drawing holds nothing that can be cut.</summary>
internal static class NothingToCut
{
    public static InspectionFinding In(DxfDrawing drawing, InspectionSettings settings)
    {
        string layers = string.Join(", ", drawing.Layers.Select(layer => layer.Name));
        return new InspectionFinding(
            InspectionCodes.NothingToCut,
            Severity.Fault,
            settings.CutLayers.IsEmpty
                ? $"No visible layer holds a line, an arc or a circle; the layers are {layers}."
                : $"None of the layers that were named ({string.Join(", ", settings.CutLayers)}) holds a line, an arc or a circle; the layers are "
                    + $"{layers}.",
            "Switch the layer on, or name the one that is cut.",
            []
        );
    }
}
