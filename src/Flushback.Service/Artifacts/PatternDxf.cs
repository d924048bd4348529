using Flushback.Dxf;
using Flushback.Dxf.Writing;
using Flushback.Geometry;
using Flushback.Patterns;
using Flushback.Patterns.Pairs;

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
    /// <param name="pattern">The pattern.</param>
    /// <param name="version">Version of DXF.</param>
    /// <param name="unit">Unit of the drawing.</param>
    /// <param name="pair">Both blades, where there are two: the second one then has layers of its own.</param>
    public static byte[] Of(DrawnPattern pattern, DxfVersion version, DrawingUnit unit, DrawnPair? pair = null) =>
        DxfWriter.Write(version, unit, [.. Layers(pattern), .. pair is null ? [] : SecondLayers(pair)]);

    /// <summary>The second blade, and the spring as it lies under it, so that a check of these layers reads it.</summary>
    private static IEnumerable<OverlayLayer> SecondLayers(DrawnPair pair)
    {
        RigidMotion toFirst = pair.SecondToFirst;
        DrawnPattern second = pair.Second;
        yield return new OverlayLayer("BLADE_2", White, [OverlayPath.Of(second.Knife.Blade.Transformed(toFirst))]);
        yield return new OverlayLayer("SPRING_2", White, [OverlayPath.Of(second.Knife.Spring.Transformed(toFirst))]);
        yield return new OverlayLayer(
            "PINS_2",
            White,
            [
                .. new[] { second.Blade.Holes[0].Circle }
                    .Concat(second.Spring.Holes.Select(hole => hole.Circle))
                    .Select(circle => new OverlayCircle(toFirst.Apply(circle))),
            ]
        );
    }

    private static IEnumerable<OverlayLayer> Layers(DrawnPattern pattern)
    {
        yield return new OverlayLayer("BLADE", White, [OverlayPath.Of(pattern.Blade.Finished)]);
        yield return new OverlayLayer("SPRING", White, [OverlayPath.Of(pattern.Spring.Finished)]);
        yield return new OverlayLayer("HANDLE", White, [OverlayPath.Of(pattern.Handle.Finished)]);
        yield return new OverlayLayer(
            "PINS",
            White,
            [.. pattern.Handle.Holes.Where(hole => !hole.IsSecond).Select(hole => new OverlayCircle(hole.Circle))]
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
