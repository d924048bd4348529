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

    /// <summary>To the contract, in the direction of travel.</summary>
    public static Wire.Outline ToWire(this Outline outline) =>
        new()
        {
            Vertices =
            {
                outline.Vertices.Select(vertex => new Wire.Vertex
                {
                    XMm = vertex.Position.X,
                    YMm = vertex.Position.Y,
                    Bulge = vertex.Bulge,
                }),
            },
        };

    /// <summary>To the contract.</summary>
    public static Wire.Circle ToWire(this Circle circle) =>
        new() { Centre = circle.Centre.ToWire(), DiameterMm = circle.DiameterMm };
}
