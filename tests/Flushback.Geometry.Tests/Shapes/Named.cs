namespace Flushback.Geometry.Tests.Shapes;

/// <summary>Shapes whose area and length anyone knows.</summary>
internal static class Named
{
    /// <summary>A square with its lower left corner at the origin.</summary>
    public static Outline Square(double side) => Polygon((0, 0), (side, 0), (side, side), (0, side));

    /// <summary>A circle of two half circles, counter-clockwise, about the origin.</summary>
    public static Outline Disc(double radius) =>
        Outline.FromVertices([new Vertex(-radius, 0, 1), new Vertex(radius, 0, 1)]);

    /// <summary>A regular hexagon about the origin, counter-clockwise.</summary>
    public static Outline Hexagon(double side) =>
        Outline.FromVertices([
            .. Enumerable
                .Range(0, 6)
                .Select(i => new Vertex(Point.Origin + (Vector.FromDirection(Angle.FromDegrees(60 * i)) * side))),
        ]);

    /// <summary>A slot: two half circles of a radius joined by straight sides, counter-clockwise.</summary>
    public static Outline Slot(double length, double radius) =>
        Outline.FromVertices([
            new Vertex(0, -radius),
            new Vertex(length, -radius, 1),
            new Vertex(length, radius),
            new Vertex(0, radius, 1),
        ]);

    public static Outline Polygon(params (double X, double Y)[] corners) =>
        Outline.FromVertices([.. corners.Select(corner => new Vertex(corner.X, corner.Y))]);
}
