using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Curves;

/// <summary>A piece of a curve without kinks, travelled from parameter 0 to 1.</summary>
internal abstract class SmoothPiece
{
    /// <summary>How far to step from an end where the curve stands still, to see where it is going.</summary>
    private const double Step = 1e-3;

    /// <summary>The point at a parameter.</summary>
    public abstract Point At(double t);

    /// <summary>The derivative at a parameter.</summary>
    public abstract Vector VelocityAt(double t);

    /// <summary>The unit direction of travel; the zero vector when the piece has no extent there.</summary>
    public Vector DirectionAt(double t)
    {
        Vector velocity = VelocityAt(t);
        double scale = At(0).DistanceTo(At(0.5)) + At(0.5).DistanceTo(At(1));
        if (velocity.Length <= 1e-9 * scale)
        {
            // Coincident control points stop the curve at an end without bending it: look a step farther in.
            double back = Math.Max(0, t - Step);
            velocity = At(Math.Min(1, back + Step)) - At(back);
        }

        return velocity.Length > 0 ? velocity.Normalized : default;
    }
}
