using System.Globalization;
using Flushback.Dxf.Writing;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Service.Drawings;
using Flushback.Service.Mapping;

namespace Flushback.Service.Artifacts;

/// <summary>The passes drawn over the user's own drawing: a layer each, with what comes off and the outline after it.</summary>
internal static class PassDrawing
{
    // Colours of the format that show on black and on white, and differ from pass to pass.
    private static readonly int[] _colours = [1, 6, 5, 4, 3, 30];

    /// <summary>The user's drawing with our layers beside his, or a new one when the knife came as outlines.</summary>
    public static byte[] Of(Simulation simulation, KnifeSource source) =>
        KnifeOverlay.Of(source, [.. simulation.Steps.Select(LayerOf)]);

    private static OverlayLayer LayerOf(SimulationStep step, int index)
    {
        Part part = step.Removed!.Part;
        RigidMotion toDrawing = step.Placement.ToDrawing(part);
        Outline left = part == Part.Blade ? step.Placement.Knife.Blade : step.Placement.Knife.Spring;
        return new OverlayLayer(
            string.Create(CultureInfo.InvariantCulture, $"FLUSHBACK_PASS_{index + 1:00}"),
            _colours[index % _colours.Length],
            [
                .. step.Removed.Regions.Select(region => OverlayPath.Of(region.Transformed(toDrawing))),
                OverlayPath.Of(left.Transformed(toDrawing)),
            ]
        );
    }
}
