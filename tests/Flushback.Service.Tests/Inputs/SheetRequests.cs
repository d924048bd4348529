using Flushback.Geometry;
using Google.Protobuf;

namespace Flushback.Service.Tests.Inputs;

/// <summary>Requests to inspect a plate of 60 by 20 mm with a hole for a 2.4 mm pin.</summary>
internal static class SheetRequests
{
    /// <summary>Middle of the hole.</summary>
    public static Point HoleAt => new(10, 10);

    /// <summary>The plate's contour.</summary>
    public static Outline Plate =>
        Outline.FromVertices([new Vertex(0, 0, 0), new Vertex(60, 0, 0), new Vertex(60, 20, 0), new Vertex(0, 20, 0)]);

    /// <summary>A plate that a shop can cut as it is.</summary>
    public static LooseDrawing Sound(int? units = 4, double scale = 1) =>
        new LooseDrawing { Units = units, Scale = scale }
            .Add("PLATE", Plate)
            .Add("PLATE", new Circle(HoleAt, 1.2025));

    /// <summary>A plate without one of its sides, and a word on its layer.</summary>
    public static LooseDrawing Flawed() =>
        new LooseDrawing()
            .Add("PLATE", Plate, leaveOut: 1)
            .Add("PLATE", new Circle(HoleAt, 1.2025))
            .AddText("PLATE", new Point(30, 10), "PLATE");

    /// <summary>A plate that is drawn twice.</summary>
    public static LooseDrawing Twice() => Sound().Add("PLATE", Plate);

    /// <summary>A request with default settings.</summary>
    public static Wire.InspectRequest Of(LooseDrawing drawing, params Wire.ArtifactKind[] artifacts) =>
        Of(drawing.ToBytes(), artifacts);

    /// <summary>A request about bytes said to be a drawing.</summary>
    public static Wire.InspectRequest Of(byte[] dxf, params Wire.ArtifactKind[] artifacts) =>
        new()
        {
            Name = "Plate",
            Dxf = ByteString.CopyFrom(dxf),
            Settings = new Wire.InspectionSettings(),
            Artifacts = { artifacts },
        };
}
