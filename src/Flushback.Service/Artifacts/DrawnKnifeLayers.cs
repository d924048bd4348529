using Flushback.Dxf.Writing;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Service.Artifacts;

/// <summary>The knife as it came, on the layers it is looked for by default: the drawing can be read again as it is.</summary>
internal static class DrawnKnifeLayers
{
    private const int White = 7;

    /// <summary>A layer for each part there is, and one for the pins.</summary>
    public static IEnumerable<OverlayLayer> Of(DrawnKnife knife)
    {
        yield return new OverlayLayer("BLADE", White, [OverlayPath.Of(knife.Blade)]);
        yield return new OverlayLayer("SPRING", White, [OverlayPath.Of(knife.Spring)]);
        if (knife.Handle is { } handle)
        {
            yield return new OverlayLayer("HANDLE", White, [OverlayPath.Of(handle)]);
        }

        IEnumerable<Circle> pins = knife.RearPin is { } rear
            ? [knife.Pivot, knife.CentrePin, rear]
            : [knife.Pivot, knife.CentrePin];
        yield return new OverlayLayer("PINS", White, [.. pins.Select(pin => new OverlayCircle(pin))]);
    }
}
