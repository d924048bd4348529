using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Patterns.Layout;

/// <summary>
/// A line along the back: level over the tang, from there on straight or falling to the rear in one arc without a kink.
/// </summary>
/// <param name="HeightMm">Height of the level part over the pivot.</param>
/// <param name="LevelToX">Where the level part ends.</param>
/// <param name="RadiusMm">Radius of the arc; infinite for a straight back.</param>
internal readonly record struct BackLine(double HeightMm, double LevelToX, double RadiusMm)
{
    /// <summary>The line that has fallen by a drop at a place.</summary>
    public static BackLine Falling(double heightMm, double levelToX, double dropMm, double atX)
    {
        // Chord and sagitta of a half arc: r = (d^2 + s^2) / (2 s).
        double along = levelToX - atX;
        double radius = dropMm > 0 ? ((along * along) + (dropMm * dropMm)) / (2 * dropMm) : double.PositiveInfinity;
        return new BackLine(heightMm, levelToX, radius);
    }

    /// <summary>True for a straight back.</summary>
    public bool IsStraight => double.IsPositiveInfinity(RadiusMm);

    /// <summary>The same line moved out of the handle, square to itself.</summary>
    public BackLine Out(double byMm) => this with { HeightMm = HeightMm + byMm, RadiusMm = RadiusMm + byMm };

    /// <summary>The point of the line at a given x.</summary>
    public Point At(double x)
    {
        if (IsStraight || x >= LevelToX)
        {
            return new Point(x, HeightMm);
        }

        double along = LevelToX - x;
        double drop = along * along / (RadiusMm + Math.Sqrt((RadiusMm * RadiusMm) - (along * along)));
        return new Point(x, HeightMm - drop);
    }

    /// <summary>The line from one x to another farther back.</summary>
    public ImmutableArray<Edge> From(double frontX, double rearX)
    {
        if (IsStraight || rearX >= LevelToX)
        {
            return [new Edge(At(frontX), At(rearX))];
        }

        double start = Math.Min(frontX, LevelToX);
        double sweep = Math.Asin((LevelToX - rearX) / RadiusMm) - Math.Asin((LevelToX - start) / RadiusMm);
        Edge arc = Edge.Arc(At(start), At(rearX), new Angle(sweep));
        return frontX > LevelToX ? [new Edge(At(frontX), At(LevelToX)), arc] : [arc];
    }
}
