using System.Collections.Immutable;
using CsCheck;
using Flushback.Geometry.Offsets;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Offsets;

/// <summary>What makes an opening one, and a closing (Serra, Image Analysis and Mathematical Morphology).</summary>
public class OpeningProperties
{
    private const double TouchingMm2 = 1e-5;

    /// <summary>Opening takes away only, closing adds only.</summary>
    [Fact]
    public void An_opening_lies_within_the_original_and_a_closing_about_it() =>
        AnyRegion.WithDistance.Sample(
            (region, distanceMm) =>
            {
                double radiusMm = Math.Abs(distanceMm);
                foreach (Point p in Opening.Of(region, radiusMm).SelectMany(PointsOn))
                {
                    Assert.InRange(region.SignedDistanceMm(p), -1e-8, double.PositiveInfinity);
                }

                foreach (Point p in Closing.Of(region, radiusMm).SelectMany(PointsOn))
                {
                    Assert.InRange(region.SignedDistanceMm(p), double.NegativeInfinity, 1e-8);
                }
            },
            print: Drawn.Text
        );

    [Fact]
    public void Opening_twice_takes_nothing_more() =>
        AnyRegion.WithDistance.Sample(
            (region, distanceMm) =>
            {
                foreach (Region opened in Opening.Of(region, Math.Abs(distanceMm)))
                {
                    AssertUnchanged(opened, Opening.Of(opened, Math.Abs(distanceMm)));
                }
            },
            print: Drawn.Text
        );

    [Fact]
    public void Closing_twice_adds_nothing_more() =>
        AnyRegion.WithDistance.Sample(
            (region, distanceMm) =>
            {
                Region closed = Assert.Single(Closing.Of(region, Math.Abs(distanceMm)));
                AssertUnchanged(closed, Closing.Of(closed, Math.Abs(distanceMm)));
            },
            print: Drawn.Text
        );

    /// <summary>Every edge of the result is a new arc of the radius or a stretch of an original edge.</summary>
    [Fact]
    public void Corners_become_arcs_of_the_radius_and_all_else_stays_where_it_was() =>
        AnyRegion.WithDistance.Sample(
            (region, distanceMm) =>
            {
                double radiusMm = Math.Abs(distanceMm);
                ImmutableArray<Region> result =
                    distanceMm < 0 ? Opening.Of(region, radiusMm) : Closing.Of(region, radiusMm);
                foreach (Edge edge in result.SelectMany(one => one.Outlines).SelectMany(outline => outline.Edges))
                {
                    bool isOld = Math.Abs(region.SignedDistanceMm(edge.PointAt(0.5))) < 1e-6;
                    Assert.True(
                        isOld || Math.Abs(edge.RadiusMm - radiusMm) < 1e-6 + (1e-8 / edge.LengthMm),
                        $"{edge} has a radius of {edge.RadiusMm} mm"
                    );
                }
            },
            print: Drawn.Text
        );

    /// <summary>Found by random areas: both ends of a crumb between two arcs were taken for the same original vertex.</summary>
    [Fact]
    public void Opening_leaves_no_edge_without_length() =>
        AnyRegion.WithDistance.Sample(
            (region, distanceMm) =>
                Assert.DoesNotContain(
                    Opening.Of(region, Math.Abs(distanceMm)).SelectMany(one => one.Outlines).SelectMany(o => o.Edges),
                    edge => edge.Start == edge.End
                ),
            print: Drawn.Text
        );

    /// <summary>The area in which that was found.</summary>
    [Fact]
    public void A_hole_close_to_a_border_opens_twice()
    {
        Region region = new(
            Outline.FromVertices([
                new(0, 4.25),
                new(0, -1, 1.1078890060460154),
                new(4, -5.938852686586531, 0.37244897959183676),
                new(8, -3),
                new(12, -6, 0.18875487057423423),
                new(16, -3.667119702728875),
                new(20, -5.369047619047619, 1),
                new(20, 4.114914757823062, -3.1794871794871793),
                new(16, 4.137937108369148, -0.0759493670886076),
                new(12, 5, -0.5517777793537615),
                new(8, 4.808780341642708),
                new(4, 4.931818181818182, -0.25),
            ]),
            [
                Outline.FromVertices([
                    new(13.709904470951168, -4.469846577529083, -1),
                    new(14.336751661477228, -4.469846577529083, -1),
                ]),
            ]
        );
        const double radiusMm = 0.35294117647058826;
        foreach (Region opened in Opening.Of(region, radiusMm))
        {
            Assert.DoesNotContain(opened.Outlines.SelectMany(outline => outline.Edges), edge => edge.Start == edge.End);
            AssertUnchanged(opened, Opening.Of(opened, radiusMm));
        }
    }

    private static void AssertUnchanged(Region expected, ImmutableArray<Region> actual)
    {
        Region only = Assert.Single(actual);
        Near.Equal(expected.AreaMm2, only.AreaMm2, TouchingMm2);
        Assert.Equal(expected.Holes.Length, only.Holes.Length);
    }

    private static IEnumerable<Point> PointsOn(Region region) =>
        region
            .Outlines.SelectMany(outline => outline.Edges)
            .SelectMany(edge => Enumerable.Range(0, 5).Select(i => edge.PointAt(i / 5.0)));
}
