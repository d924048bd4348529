using Flushback.Geometry;
using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Conflicts;

/// <summary>Whether enough of the spring is left between back and underside.</summary>
internal static class SpringRules
{
    // A belly thinner than this share of the nose is no spring but a hinge.
    private const double LeastBellyOfNose = 0.5;
    private const int Stations = 8;

    /// <summary>The conflicts of the spring's depth.</summary>
    public static IEnumerable<PatternConflict> Of(PatternLayout layout) => [.. Room(layout), .. Belly(layout)];

    /// <summary>Depths that were left out, where the closed edge leaves no room for them.</summary>
    private static IEnumerable<PatternConflict> Room(PatternLayout layout)
    {
        PatternParameters p = layout.Dimensions;
        foreach (string path in new[] { "spring.centre_depth_mm", "spring.rear_depth_mm" })
        {
            PatternLimit limit = PatternLimits.Of(path);
            double depth = limit.Read(p)!.Value;
            if (limit.Read(layout.Given) is null && !(depth >= limit.Least))
            {
                yield return Conflict.Of(
                    $"Between the closed edge and a back with a back drop of {Said.Length(p.Handle.BackDropMm)} there is room for a {limit.Name} of {Said.Length(Math.Max(depth, 0))}, less than the {Said.Length(limit.Least)} it needs; raise the kick height of {Said.Length(p.Tang.KickHeightMm!.Value)}, lower the back drop, or make the spring deeper at the nose.",
                    path,
                    "tang.kick_height_mm",
                    "handle.back_drop_mm",
                    "spring.nose_depth_mm"
                );
            }
        }
    }

    private static IEnumerable<PatternConflict> Belly(PatternLayout layout)
    {
        SpringParameters spring = layout.Dimensions.Spring;
        Point front = new(-spring.PadEndMm!.Value, layout.Dimensions.Tang.HeightMm);
        Point rear = new(layout.Spring.CentrePin.X + layout.Rear.HalfBossMm, layout.Rear.UnderPinY);
        Edge belly = new(rear, front, -2 * spring.BellyReliefMm / rear.DistanceTo(front));
        double thinnest = double.PositiveInfinity;
        for (int i = 0; i <= Stations; i++)
        {
            Point under = belly.PointAt((double)i / Stations);
            thinnest = Math.Min(thinnest, layout.Spring.FinishedBack.At(under.X).Y - under.Y);
        }

        double least = LeastBellyOfNose * spring.NoseDepthMm;
        if (!(thinnest >= least))
        {
            yield return Conflict.Of(
                $"A belly relief of {Said.Length(spring.BellyReliefMm)} leaves {Said.Length(thinnest)} of a spring that is {Said.Length(spring.NoseDepthMm)} deep at the nose and {Said.Length(spring.CentreDepthMm!.Value)} at the centre pin; leave {Said.Length(least)} at least.",
                "spring.belly_relief_mm",
                "spring.nose_depth_mm",
                "spring.centre_depth_mm"
            );
        }
    }
}
