using System.Globalization;
using Flushback.Dxf.Writing;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Reports.Pictures;
using Flushback.Reports.Print;
using Flushback.Reports.Sheets;
using Flushback.Reports.Wording;
using Flushback.Service.Mapping;

namespace Flushback.Service.Artifacts;

/// <summary>How much comes off, written beside the metal with an arrow to the place where it counts.</summary>
internal static class AmountMarks
{
    // Small enough to stand around a tang, large enough to find on a print.
    private const double TextHeightMm = 0.6;
    private const double LeaderMm = 2;
    private const double GapMm = 0.3;

    // Width of a letter against its height in the plain fonts of CAD programs, about.
    private const double LetterWidth = 0.95;

    private const double ArrowMm = 0.5;
    private const double ArrowDeg = 18;

    /// <summary>The marks, on the user's drawing.</summary>
    public static IEnumerable<OverlayEntity> Of(Simulation simulation)
    {
        Placement placement = simulation.Start.Placement;
        Outline[] drawn =
        [
            placement.Knife.Blade.Transformed(placement.ToDrawing(Part.Blade)),
            placement.Knife.Spring.Transformed(placement.ToDrawing(Part.Spring)),
        ];
        LabelPlaces places = new(drawn.SelectMany(outline => outline.Edges), window: null, GapMm);
        foreach (CutLabel label in CutLabel.AllOf(simulation, Measure.Plain))
        {
            RigidMotion toDrawing = placement.ToDrawing(label.Part);
            string words = string.Create(CultureInfo.InvariantCulture, $"{label.Pass}: {label.Words}");
            PlacedLabel placed = places.Place(
                toDrawing.Apply(label.At),
                toDrawing.Apply(label.Outward),
                words.Length * LetterWidth * TextHeightMm,
                TextHeightMm,
                LeaderMm
            );
            yield return new OverlayEdge(new Edge(placed.At, placed.End));
            Vector back = (placed.End - placed.At).Normalized * ArrowMm;
            yield return new OverlayEdge(new Edge(placed.At, placed.At + back.Rotated(Angle.FromDegrees(ArrowDeg))));
            yield return new OverlayEdge(new Edge(placed.At, placed.At + back.Rotated(Angle.FromDegrees(-ArrowDeg))));
            yield return new OverlayText(words, placed.Foot, TextHeightMm, AlignmentOf(placed.Anchor));
        }
    }

    private static TextAlignment AlignmentOf(TextAnchor anchor) =>
        anchor switch
        {
            TextAnchor.Left => TextAlignment.Left,
            TextAnchor.Middle => TextAlignment.Middle,
            _ => TextAlignment.Right,
        };
}
