using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Service.Drawings;

namespace Flushback.Service.Mapping;

/// <summary>How the drawing was understood, to the contract.</summary>
internal static class ReadingMapping
{
    /// <summary>To the contract.</summary>
    /// <param name="bench">What the bench shows.</param>
    /// <param name="source">How the knife came in.</param>
    public static Wire.Reading ToWire(BenchReport bench, KnifeSource source)
    {
        Placement placement = bench.Placement;
        Knife knife = placement.Knife;

        // The knife frame holds the blade open; the drawing shows it at the drawn blade angle.
        RigidMotion bladeToDrawing = Knife.BladeAt(placement.DrawnBladeAngle).Then(placement.ToDrawing);
        Wire.Reading reading = new()
        {
            DrawnBladeAngleDeg = placement.DrawnBladeAngle.Degrees,
            DrawnBladeAngleFound = placement.DrawnBladeAngleFound,
            Mirrored = placement.ToDrawing.Mirrored,
            AxisDeg = placement.ToDrawing.Apply(new Vector(1, 0)).Direction.Degrees,
            HasHalfStop = bench.HasHalfStop,
            DialPoint = placement.ToDrawing.Apply(knife.DialPoint).ToWire(),
            Unit = source.Unit,
        };
        reading.BladeEdges.AddRange(
            Named(knife.Blade, knife.BladeFaces, bladeToDrawing)
                .Select(edge => new Wire.NamedBladeEdge { Middle = edge.Middle, Face = edge.Face.ToWire() })
        );
        reading.SpringEdges.AddRange(
            Named(knife.Spring, knife.SpringFaces, placement.ToDrawing)
                .Select(edge => new Wire.NamedSpringEdge { Middle = edge.Middle, Face = edge.Face.ToWire() })
        );
        reading.Repairs.AddRange(source.Repairs);
        return reading;
    }

    private static IEnumerable<(Wire.Point Middle, TFace Face)> Named<TFace>(
        Outline outline,
        ImmutableArray<TFace> faces,
        RigidMotion toDrawing
    ) => outline.Edges.Zip(faces, (edge, face) => (toDrawing.Apply(edge.PointAt(0.5)).ToWire(), face));
}
