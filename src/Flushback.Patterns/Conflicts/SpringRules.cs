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
    public static IEnumerable<PatternConflict> Of(PatternLayout layout)
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
