using System.Collections.Immutable;
using CsCheck;
using Flushback.Geometry.Checking;
using Flushback.Geometry.Offsets;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Offsets;

/// <summary>What makes an offset one, on random areas; the definition is checked by distances alone.</summary>
public class OffsetProperties
{
    private const double RoundingMm = 2e-8;

    [Fact]
    public void Every_point_of_the_new_border_lies_the_distance_away_from_the_old_one() =>
        AnyRegion.WithDistance.Sample(
            (region, distanceMm) => AssertBorderIsAway(region, distanceMm, Offset.Of(region, distanceMm)),
            print: Drawn.Text
        );

    [Fact]
    public void A_point_is_inside_when_its_distance_says_so_and_not_otherwise() =>
        AnyRegion.WithDistance.Sample(
            (region, distanceMm) =>
            {
                ImmutableArray<Region> moved = Offset.Of(region, distanceMm);
                Box box = region.Border.Bounds.Grown(Math.Max(0, distanceMm) + 0.5);
                foreach (Point p in Scattered.Over(box, 60))
                {
                    double insideMm = region.SignedDistanceMm(p) + distanceMm;
                    if (Math.Abs(insideMm) > 1e-6)
                    {
                        Assert.True(Covers(moved, p) == insideMm > 0, $"{p} is {insideMm} mm inside");
                    }
                }
            },
            print: Drawn.Text
        );

    [Fact]
    public void The_outlines_are_sound_and_the_holes_inside() =>
        AnyRegion.WithDistance.Sample(
            (region, distanceMm) =>
            {
                foreach (Region moved in Offset.Of(region, distanceMm))
                {
                    Assert.All(moved.Outlines, AssertSound);
                    Assert.All(moved.Holes, hole => Assert.True(moved.Border.Contains(hole.Edges[0].Start)));
                }
            },
            print: Drawn.Text
        );

    private static void AssertSound(Outline outline)
    {
        GeometryTolerances exact = new()
        {
            TouchingMm = 1e-8,
            NoLengthMm = 1e-9,
            NoWidthMm = 1e-8,
        };
        ImmutableArray<OutlineFlaw> flaws = OutlineCheck.FlawsOf([.. outline.Vertices], exact);

        // Necks may be as narrow as the tolerance, and where areas only touch an outline may touch itself.
        Assert.DoesNotContain(
            flaws,
            flaw => flaw.Kind is not (OutlineFlawKind.SelfTouching or OutlineFlawKind.SelfOverlapping)
        );
    }

    private static void AssertBorderIsAway(Region region, double distanceMm, ImmutableArray<Region> moved)
    {
        foreach (Edge edge in moved.SelectMany(one => one.Outlines).SelectMany(outline => outline.Edges))
        {
            for (int i = 0; i <= 4; i++)
            {
                Near.Equal(-distanceMm, region.SignedDistanceMm(edge.PointAt(i / 4.0)), RoundingMm);
            }
        }
    }

    private static bool Covers(ImmutableArray<Region> regions, Point p) =>
        regions.Any(region => region.SignedDistanceMm(p) >= 0);
}
