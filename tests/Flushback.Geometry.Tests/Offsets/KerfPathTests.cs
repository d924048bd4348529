using System.Collections.Immutable;
using CsCheck;
using Flushback.Geometry.Offsets;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Offsets;

/// <summary>Where a kerf runs, and what it cannot clear.</summary>
public class KerfPathTests
{
    [Fact]
    public void The_path_runs_outside_the_part_and_inside_its_holes()
    {
        Region part = new(Named.Square(20), [Named.Disc(3).Transformed(new RigidMotion(default, new Vector(10, 10)))]);
        Region path = Assert.Single(KerfPath.Around(part, 0.4).Paths);
        Near.Equal(new Point(-0.2, -0.2), new Point(path.Border.Bounds.MinX, path.Border.Bounds.MinY));
        Near.Equal(2.8 * 2.8 * Math.PI, Assert.Single(path.Holes).AreaMm2);
        Assert.Empty(KerfPath.Around(part, 0.4).Unreached);
    }

    /// <summary>A right angle keeps (1 - pi/4) r^2 of metal, sqrt(2) r - r deep at the corner (closed form).</summary>
    [Fact]
    public void An_inner_corner_keeps_metal()
    {
        Region part = new(Named.Polygon((0, 0), (20, 0), (20, 10), (10, 10), (10, 20), (0, 20)));
        UnreachedPlace place = Assert.Single(CutterReach.UnreachedBy(part, 1.5));
        Near.Equal((1 - (Math.PI / 4)) * 1.5 * 1.5, place.AreaMm2);
        Near.Equal(new Point(10, 10), place.At);
        Near.Equal((Math.Sqrt(2) - 1) * 1.5, place.DepthMm);
    }

    [Theory]
    [InlineData(0.9, 0)]
    [InlineData(1.0, 0)]
    [InlineData(1.1, 1)]
    public void An_inner_arc_is_reached_by_a_cutter_no_larger_than_it(double cutterRadiusMm, int places)
    {
        Region part = new(
            Outline.FromVertices([
                new Vertex(0, 0),
                new Vertex(20, 0),
                new Vertex(20, 10),
                new Vertex(11, 10, -Math.Tan(Math.PI / 8)),
                new Vertex(10, 11),
                new Vertex(10, 20),
                new Vertex(0, 20),
            ])
        );
        ImmutableArray<UnreachedPlace> unreached = CutterReach.UnreachedBy(part, cutterRadiusMm);
        Assert.Equal(places, unreached.Length);
        foreach (UnreachedPlace place in unreached)
        {
            // The middle of the arc, as far from the larger circle about (11.1, 11.1) as the two differ (closed form).
            // A flat maximum is found to the root of rounding.
            Near.Equal(new Point(11 - Math.Sqrt(0.5), 11 - Math.Sqrt(0.5)), place.At, 1e-7);
            Near.Equal((Math.Sqrt(2) - 1) * (cutterRadiusMm - 1), place.DepthMm);
            Near.Equal((1 - (Math.PI / 4)) * ((cutterRadiusMm * cutterRadiusMm) - 1), place.AreaMm2);
        }
    }

    [Fact]
    public void A_hole_smaller_than_the_kerf_is_not_cut_and_named_whole()
    {
        Region part = new(Named.Square(20), [Named.Disc(1).Transformed(new RigidMotion(default, new Vector(10, 10)))]);
        KerfPath path = KerfPath.Around(part, 2.5);
        Assert.Empty(Assert.Single(path.Paths).Holes);
        Near.Equal(Math.PI, path.UnreachedAreaMm2);
        Near.Equal(Math.PI, Assert.Single(path.Unreached).AreaMm2);
    }

    /// <summary>What the cutter leaves is the closing less the part (Serra), whatever the part looks like.</summary>
    [Fact]
    public void The_places_together_are_all_the_closing_adds() =>
        AnyRegion.WithDistance.Sample(
            (region, distanceMm) =>
            {
                KerfPath path = KerfPath.Around(region, 2 * Math.Abs(distanceMm));
                double addedMm2 = Closing.Of(region, Math.Abs(distanceMm)).Sum(one => one.AreaMm2) - region.AreaMm2;

                // Slivers thinner than a ten-thousandth of a millimetre are no places.
                Near.Equal(addedMm2, path.UnreachedAreaMm2, 1e-5 + (1e-4 * region.PerimeterMm / 2));
                Assert.All(path.Unreached, place => Assert.InRange(region.SignedDistanceMm(place.At), -1e-7, 1e-7));
                Assert.All(path.Unreached, place => Assert.True(place.DepthMm > 0));
            },
            print: Drawn.Text
        );

    [Fact]
    public void A_negative_kerf_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => KerfPath.Around(new Region(Named.Square(10)), -0.1));
}
