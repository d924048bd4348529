using Flushback.Dxf.Writing;
using Flushback.Inspection;
using Flushback.Service.Drawings;

namespace Flushback.Service.Artifacts;

/// <summary>Where the middle of the kerf runs, drawn beside the user's own drawing on layers of our own.</summary>
internal static class CutPathDrawing
{
    /// <summary>Layer of the paths round the outside of parts.</summary>
    public const string OutsideLayer = "FLUSHBACK_CUT_OUTSIDE";

    /// <summary>Layer of the paths round the inside of holes, which are cut first.</summary>
    public const string InsideLayer = "FLUSHBACK_CUT_INSIDE";

    private const int Red = 1;
    private const int Blue = 5;

    /// <summary>The user's drawing with both layers beside his.</summary>
    public static byte[] Of(InspectionReport report, DrawingFile file) =>
        DxfOverlay.AddTo(
            file.Bytes,
            file.Unit,
            [
                new OverlayLayer(InsideLayer, Blue, [.. PathsOf(report, ofHoles: true)]),
                new OverlayLayer(OutsideLayer, Red, [.. PathsOf(report, ofHoles: false)]),
            ]
        );

    private static IEnumerable<OverlayEntity> PathsOf(InspectionReport report, bool ofHoles) =>
        report.CutPaths.Where(path => path.IsHole == ofHoles).Select(path => OverlayPath.Of(path.Path));
}
