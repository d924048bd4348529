using System.Collections.Immutable;
using Flushback.Dxf.Writing;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;
using Flushback.Service.Drawings;
using Flushback.Service.Mapping;

namespace Flushback.Service.Artifacts;

/// <summary>A plan drawn over the user's own drawing: the corrected outlines, the metal to take off, and its amounts.</summary>
internal static class CorrectedDrawing
{
    // Colours of the format that show on black and on white.
    private const int Red = 1;
    private const int Green = 3;
    private const int Magenta = 6;

    /// <summary>The layers the plan is drawn on: names that the user's drawing does not have yet.</summary>
    public static Wire.CorrectedLayers LayersFor(KnifeSource source)
    {
        Wire.CorrectedLayers layers = new()
        {
            Blade = "FLUSHBACK_BLADE",
            Spring = "FLUSHBACK_SPRING",
            Metal = "FLUSHBACK_TAKE_OFF",
            Amounts = "FLUSHBACK_AMOUNTS",
        };
        if (source.File is { } file)
        {
            string suffix = FreeLayerNames.SuffixFor(
                file.Bytes,
                [layers.Blade, layers.Spring, layers.Metal, layers.Amounts]
            );
            layers.Blade += suffix;
            layers.Spring += suffix;
            layers.Metal += suffix;
            layers.Amounts += suffix;
        }

        return layers;
    }

    /// <summary>The user's drawing with our layers beside his, or a new one when the knife came as outlines.</summary>
    public static byte[] Of(PlanReport plan, Wire.CorrectedLayers layers, KnifeSource source)
    {
        SimulationStep end = plan.Simulation.End;
        Knife knife = end.Placement.Knife;
        DrawnKnife drawn = source.Drawn;
        ImmutableArray<OverlayEntity> springPins = drawn.RearPin is { } rear
            ? [new OverlayCircle(drawn.CentrePin), new OverlayCircle(rear)]
            : [new OverlayCircle(drawn.CentrePin)];
        return KnifeOverlay.Of(
            source,
            [
                new OverlayLayer(
                    layers.Blade,
                    Green,
                    [
                        OverlayPath.Of(knife.Blade.Transformed(end.Placement.ToDrawing(Part.Blade))),
                        new OverlayCircle(drawn.Pivot),
                    ]
                ),
                new OverlayLayer(
                    layers.Spring,
                    Green,
                    [OverlayPath.Of(knife.Spring.Transformed(end.Placement.ToDrawing(Part.Spring))), .. springPins]
                ),
                new OverlayLayer(layers.Metal, Red, [.. plan.Simulation.Steps.SelectMany(RegionsOf)]),
                new OverlayLayer(layers.Amounts, Magenta, [.. AmountMarks.Of(plan.Simulation)]),
            ]
        );
    }

    private static IEnumerable<OverlayEntity> RegionsOf(SimulationStep step)
    {
        RigidMotion toDrawing = step.Placement.ToDrawing(step.Removed!.Part);
        return step.Removed.Regions.Select(region => OverlayPath.Of(region.Transformed(toDrawing)));
    }
}
