using Flushback.Dxf;
using Flushback.Dxf.Writing;
using Flushback.Patterns;

namespace Flushback.Service.Artifacts;

/// <summary>A pattern put together, blade open, pivot at the origin: finished outlines on the layers that a check reads.</summary>
internal static class PatternDxf
{
    /// <summary>Layer of the outlines with stock for grinding.</summary>
    public const string RoughLayer = "FLUSHBACK_ROUGH";

    private const int White = 7;
    private const int Grey = 8;
    private const int Blue = 5;

    /// <summary>The drawing.</summary>
    public static byte[] Of(DrawnPattern pattern, DxfVersion version, DrawingUnit unit) =>
        DxfWriter.Write(version, unit, [.. Layers(pattern)]);

    private static IEnumerable<OverlayLayer> Layers(DrawnPattern pattern)
    {
        yield return new OverlayLayer("BLADE", White, [OverlayPath.Of(pattern.Blade.Finished)]);
        yield return new OverlayLayer("SPRING", White, [OverlayPath.Of(pattern.Spring.Finished)]);
        yield return new OverlayLayer("HANDLE", White, [OverlayPath.Of(pattern.Handle.Finished)]);
        yield return new OverlayLayer(
            "PINS",
            White,
            [.. pattern.Handle.Holes.Select(hole => new OverlayCircle(hole.Circle))]
        );
        yield return new OverlayLayer(
            "FLUSHBACK_HANDLE_LINE",
            Blue,
            [new OverlayPath(pattern.HandleLine, IsClosed: false)]
        );
        yield return PatternMarks.On(pattern.Pieces.SelectMany(piece => piece.Marks));
        if (pattern.Pieces.Any(piece => piece.HasStock))
        {
            yield return new OverlayLayer(
                RoughLayer,
                Grey,
                [.. pattern.Pieces.Where(piece => piece.HasStock).Select(piece => OverlayPath.Of(piece.Rough))]
            );
        }
    }
}
