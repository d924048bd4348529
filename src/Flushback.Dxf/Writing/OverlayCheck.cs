using System.Text.RegularExpressions;
using Flushback.Geometry;

namespace Flushback.Dxf.Writing;

/// <summary>Refuses what would make a file that no reader accepts. The layers come from our own code, so it throws.</summary>
internal static partial class OverlayCheck
{
    public static void ThrowIfUnfit(IReadOnlyList<OverlayLayer> layers)
    {
        foreach (OverlayLayer layer in layers)
        {
            if (!LayerName().IsMatch(layer.Name))
            {
                throw new ArgumentException(
                    $"'{layer.Name}' is no layer name that every version accepts.",
                    nameof(layers)
                );
            }

            if (layer.ColourIndex is < 1 or > 255)
            {
                throw new ArgumentException($"Layer {layer.Name}: a colour index runs from 1 to 255.", nameof(layers));
            }

            ThrowIfUnfit(layer.Name, layer.Entities);
        }
    }

    public static void ThrowIfUnfit(string layer, IEnumerable<OverlayEntity> entities)
    {
        if (!entities.All(IsFit))
        {
            throw new ArgumentException(
                $"Layer {layer} holds an entity that is empty or has a number that is not finite.",
                nameof(entities)
            );
        }
    }

    private static bool IsFit(OverlayEntity entity) =>
        entity switch
        {
            OverlayPath path => path.Edges.Length >= (path.IsClosed ? 2 : 1) && path.Edges.All(IsFinite),
            OverlayEdge { Edge: var edge } => IsFinite(edge) && edge.Start != edge.End,
            OverlayCircle { Circle: var circle } => circle.Centre.IsFinite && IsSize(circle.RadiusMm),
            OverlayPoint point => point.At.IsFinite,
            OverlayText text => text.At.IsFinite && IsSize(text.HeightMm),
            _ => false,
        };

    private static bool IsFinite(Edge edge) => edge.Start.IsFinite && edge.End.IsFinite && double.IsFinite(edge.Bulge);

    private static bool IsSize(double mm) => double.IsFinite(mm) && mm > 0;

    [GeneratedRegex("^[A-Za-z0-9$_-]{1,31}$")]
    private static partial Regex LayerName();
}
