using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Curves;

/// <summary>A control point of a rational curve.</summary>
/// <param name="Position">Where it lies.</param>
/// <param name="Weight">How hard it pulls; 1 for all in a curve that is not rational.</param>
internal readonly record struct ControlPoint(Point Position, double Weight = 1);

/// <summary>A rational Bezier curve: what every span of a spline is.</summary>
/// <param name="controls">Degree plus one control points, with weights above zero.</param>
internal sealed class BezierPiece(ImmutableArray<ControlPoint> controls) : SmoothPiece
{
    /// <summary>The control points.</summary>
    public ImmutableArray<ControlPoint> Controls => controls;

    /// <summary>The same curve moved: affine maps act on the control points.</summary>
    public BezierPiece Mapped(PlaneMap map) =>
        new([.. controls.Select(control => control with { Position = map.Apply(control.Position) })]);

    /// <inheritdoc/>
    public override Point At(double t)
    {
        (Homogeneous first, Homogeneous last) = LastTwo(t);
        return Homogeneous.Between(first, last, t).Point;
    }

    /// <inheritdoc/>
    public override Vector VelocityAt(double t)
    {
        (Homogeneous first, Homogeneous last) = LastTwo(t);
        Homogeneous at = Homogeneous.Between(first, last, t);

        // C = N / w, so C' = (N' - w' C) / w; in N and w the curve is polynomial, with derivative degree (last - first).
        int degree = controls.Length - 1;
        double x = degree * (last.X - first.X);
        double y = degree * (last.Y - first.Y);
        double w = degree * (last.W - first.W);
        Point c = at.Point;
        return new Vector((x - (w * c.X)) / at.W, (y - (w * c.Y)) / at.W);
    }

    /// <summary>De Casteljau's scheme down to the last two points, which hold both the value and the derivative.</summary>
    private (Homogeneous First, Homogeneous Last) LastTwo(double t)
    {
        Span<Homogeneous> points = stackalloc Homogeneous[controls.Length];
        for (int i = 0; i < controls.Length; i++)
        {
            points[i] = Homogeneous.Of(controls[i]);
        }

        for (int count = controls.Length - 1; count >= 2; count--)
        {
            for (int i = 0; i < count; i++)
            {
                points[i] = Homogeneous.Between(points[i], points[i + 1], t);
            }
        }

        return (points[0], points[1]);
    }
}

/// <summary>A weighted point: (x w, y w, w).</summary>
internal readonly record struct Homogeneous(double X, double Y, double W)
{
    /// <summary>The place it stands for.</summary>
    public Point Point => new(X / W, Y / W);

    /// <summary>The weighted point of a control point.</summary>
    public static Homogeneous Of(ControlPoint control) =>
        new(control.Position.X * control.Weight, control.Position.Y * control.Weight, control.Weight);

    /// <summary>The point that divides a stretch at <paramref name="t"/>.</summary>
    public static Homogeneous Between(in Homogeneous a, in Homogeneous b, double t) =>
        new(a.X + ((b.X - a.X) * t), a.Y + ((b.Y - a.Y) * t), a.W + ((b.W - a.W) * t));
}
