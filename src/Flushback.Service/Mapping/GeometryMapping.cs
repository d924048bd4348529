using Flushback.Geometry;

namespace Flushback.Service.Mapping;

/// <summary>Points, outlines and circles between the contract and the core. Finite numbers only: see the validation.</summary>
internal static class GeometryMapping
{
    /// <summary>From the contract.</summary>
    public static Point ToPoint(this Wire.Point point) => new(point.XMm, point.YMm);

    /// <summary>To the contract.</summary>
    public static Wire.Point ToWire(this Point point) => new() { XMm = point.X, YMm = point.Y };

    /// <summary>From the contract; at least two vertices.</summary>
    public static Outline ToOutline(this Wire.Outline outline) =>
        Outline.FromVertices([.. outline.Vertices.Select(vertex => new Vertex(vertex.XMm, vertex.YMm, vertex.Bulge))]);

    /// <summary>From the contract.</summary>
    public static Circle ToCircle(this Wire.Circle circle) => new(circle.Centre.ToPoint(), circle.DiameterMm / 2);
}
