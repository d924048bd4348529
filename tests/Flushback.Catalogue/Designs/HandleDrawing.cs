using Flushback.Geometry;

namespace Flushback.Catalogue.Designs;

/// <summary>Draws a handle that buries the tip of a closed blade.</summary>
internal static class HandleDrawing
{
    /// <summary>How far the handle reaches past the closed tip, below and behind it.</summary>
    private const double OverTipMm = 2.2;

    /// <summary>How far it reaches behind the rear pin, so that no spring stands out of it.</summary>
    private const double BehindPinMm = 8;

    /// <summary>The handle, counter-clockwise.</summary>
    public static Outline Draw(KnifeDesign design)
    {
        double back = design.Spring.UndersideMm + design.Spring.DepthMm;
        double rear = Math.Min(-design.Blade.LengthMm - 6, design.Spring.RearPin.X - BehindPinMm);
        double low = -design.Blade.TipMm - OverTipMm;
        return Outline.FromVertices([
            new Vertex(2, back),
            new Vertex(rear + 3, back, 0.3),
            new Vertex(rear + 3, low),
            new Vertex(rear + 20, low, 0.08),
            new Vertex(2, low, 0.25),
        ]);
    }
}
