using Flushback.Dxf;
using Flushback.Dxf.Writing;
using Flushback.Service.Drawings;

namespace Flushback.Service.Artifacts;

/// <summary>Layers of ours beside the knife as it came in.</summary>
internal static class KnifeOverlay
{
    /// <summary>The user's drawing with the layers beside his, or a new one when the knife came as outlines.</summary>
    public static byte[] Of(KnifeSource source, IReadOnlyList<OverlayLayer> layers) =>
        source.File is { } file
            ? DxfOverlay.AddTo(file.Bytes, file.Unit, layers)
            : DxfWriter.Write(
                DxfVersion.R2000,
                DrawingUnit.Millimetre,
                [.. DrawnKnifeLayers.Of(source.Drawn), .. layers]
            );
}
