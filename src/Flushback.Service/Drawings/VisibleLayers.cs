using System.Globalization;
using Flushback.Dxf.Drawings;

namespace Flushback.Service.Drawings;

/// <summary>The layers a maker sees, for a sentence about one he does not.</summary>
internal static class VisibleLayers
{
    private const int MostListed = 20;

    /// <summary>The visible layers in words, for a maker who looks for the right one.</summary>
    public static string InWords(DxfDrawing drawing)
    {
        List<string> names = [.. drawing.Layers.Where(layer => layer.IsVisible).Select(layer => $"'{layer.Name}'")];
        return names.Count switch
        {
            0 => "the drawing has no visible layer",
            <= MostListed => $"its visible layers are {string.Join(", ", names)}",
            _ => string.Create(
                CultureInfo.InvariantCulture,
                $"its visible layers are {string.Join(", ", names.Take(MostListed))} and {names.Count - MostListed} more"
            ),
        };
    }
}
