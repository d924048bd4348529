using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Google.Protobuf;

namespace Flushback.Service.Tests.Inputs;

/// <summary>Requests about knives of the catalogue.</summary>
internal static class Requests
{
    /// <summary>A knife that reads as it should, as outlines.</summary>
    public static Wire.CheckRequest Outlines(params Wire.ArtifactKind[] artifacts) =>
        Outlines(KnifeCatalogue.Wagtail.ToDrawn(), artifacts);

    /// <summary>A knife as outlines.</summary>
    public static Wire.CheckRequest Outlines(DrawnKnife knife, params Wire.ArtifactKind[] artifacts)
    {
        Wire.KnifeOutlines outlines = new()
        {
            Blade = Outline(knife.Blade),
            Spring = Outline(knife.Spring),
            Handle = knife.Handle is { } handle ? Outline(handle) : null,
            Pivot = Pin(knife.Pivot),
            CentrePin = Pin(knife.CentrePin),
            RearPin = knife.RearPin is { } rear ? Pin(rear) : null,
        };
        return Of(new Wire.Knife { Outlines = outlines }, artifacts);
    }

    /// <summary>A drawing.</summary>
    public static Wire.CheckRequest Drawing(LooseDrawing drawing, params Wire.ArtifactKind[] artifacts) =>
        Drawing(drawing.ToBytes(), artifacts);

    /// <summary>Bytes said to be a drawing.</summary>
    public static Wire.CheckRequest Drawing(byte[] dxf, params Wire.ArtifactKind[] artifacts) =>
        Of(new Wire.Knife { Drawing = new Wire.KnifeDrawing { Dxf = ByteString.CopyFrom(dxf) } }, artifacts);

    private static Wire.CheckRequest Of(Wire.Knife knife, Wire.ArtifactKind[] artifacts) =>
        new()
        {
            Name = "Wagtail",
            Knife = knife,
            Artifacts = { artifacts },
        };

    private static Wire.Outline Outline(Outline outline) =>
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

    private static Wire.Circle Pin(Circle pin) =>
        new()
        {
            Centre = new Wire.Point { XMm = pin.Centre.X, YMm = pin.Centre.Y },
            DiameterMm = pin.DiameterMm,
        };
}
