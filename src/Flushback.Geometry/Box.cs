namespace Flushback.Geometry;

/// <summary>An axis-aligned bounding box in millimetres. <see cref="Empty"/> contains nothing.</summary>
public readonly record struct Box(double MinX, double MinY, double MaxX, double MaxY)
{
    /// <summary>The box of no points at all.</summary>
    public static Box Empty =>
        new(double.PositiveInfinity, double.PositiveInfinity, double.NegativeInfinity, double.NegativeInfinity);

    /// <summary>Extent along x, in millimetres.</summary>
    public double WidthMm => MaxX - MinX;

    /// <summary>Extent along y, in millimetres.</summary>
    public double HeightMm => MaxY - MinY;

    /// <summary>Width and height together, in millimetres: how large the box is when it may be flat.</summary>
    public double HalfPerimeterMm => WidthMm + HeightMm;

    /// <summary>The point in the middle.</summary>
    public Point Centre => new((MinX + MaxX) / 2, (MinY + MaxY) / 2);

    /// <summary>The smallest box that holds this one and a point.</summary>
    public Box Including(Point p) =>
        new(Math.Min(MinX, p.X), Math.Min(MinY, p.Y), Math.Max(MaxX, p.X), Math.Max(MaxY, p.Y));

    /// <summary>The smallest box that holds both.</summary>
    public Box Including(Box other) =>
        new(
            Math.Min(MinX, other.MinX),
            Math.Min(MinY, other.MinY),
            Math.Max(MaxX, other.MaxX),
            Math.Max(MaxY, other.MaxY)
        );

    /// <summary>This box grown on every side.</summary>
    public Box Grown(double byMm) => new(MinX - byMm, MinY - byMm, MaxX + byMm, MaxY + byMm);

    /// <summary>Distance between two boxes in millimetres: zero when they touch, infinite when one is empty.</summary>
    public double GapTo(Box other)
    {
        double dx = Math.Max(0, Math.Max(other.MinX - MaxX, MinX - other.MaxX));
        double dy = Math.Max(0, Math.Max(other.MinY - MaxY, MinY - other.MaxY));
        return Math.Sqrt((dx * dx) + (dy * dy));
    }

    /// <summary>Distance to a point in millimetres: zero when it lies inside, infinite when the box is empty.</summary>
    public double GapTo(Point p) => GapTo(new Box(p.X, p.Y, p.X, p.Y));

    /// <summary>True when the two share at least a point.</summary>
    public bool Touches(Box other) =>
        MinX <= other.MaxX && other.MinX <= MaxX && MinY <= other.MaxY && other.MinY <= MaxY;

    /// <summary>True when the point lies inside or on the border.</summary>
    public bool Contains(Point p) => p.X >= MinX && p.X <= MaxX && p.Y >= MinY && p.Y <= MaxY;
}
