using System.Collections.Immutable;
using CsCheck;
using Flushback.Geometry.Distances;
using Flushback.Geometry.Offsets;
using Flushback.Geometry.Removal;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Offsets;

/// <summary>Offsets, kerf, opening and rounds of random areas beside an independent library that offsets polygons.</summary>
/// <remarks>
/// Flattened to a sagitta s, an area's border has moved by no more than s, so every distance from it has changed by no
/// more. The library's round joins lie up to t inside the circle, and its grid moves everything by up to g. What it calls
/// the offset by d so lies between the exact offsets by d - e and d + e, where e = s + t + g. Area grows with the
/// distance, which bounds the area. The border lies between the same two borders, and so no farther from the exact one
/// than they are. The length of a polygon about arcs differs by up to e for each radian of turning, and as those of the
/// two bounds where corners move or parts vanish.
/// </remarks>
public class PolygonRefereeTests
{
    private const int Regions = 250;
    private const double JoinMm = PolygonReferee.ArcToleranceMm + PolygonReferee.GridMm;
    private const double ErrorMm = PolygonReferee.SagittaMm + JoinMm;

    [Fact]
    public void Offsets_agree_in_area_length_and_place() =>
        AnyRegion
            .WithDistance.Array[Regions]
            .Sample(
                cases =>
                    AssertAgree(
                        cases,
                        distanceMm => [distanceMm],
                        (region, distanceMm, errorMm) => Offset.Of(region, distanceMm + errorMm)
                    ),
                iter: 1
            );

    [Fact]
    public void Kerfs_agree_in_area_length_and_place() =>
        AnyRegion
            .WithDistance.Array[Regions]
            .Sample(
                cases =>
                    AssertAgree(
                        cases,
                        distanceMm => [Math.Abs(distanceMm) / 10],
                        (region, distanceMm, errorMm) =>
                            KerfPath.Around(region, 2 * ((Math.Abs(distanceMm) / 10) + errorMm)).Paths
                    ),
                iter: 1
            );

    [Fact]
    public void Openings_and_closings_agree_in_area_length_and_place() =>
        AnyRegion
            .WithDistance.Array[Regions]
            .Sample(
                cases =>
                    AssertAgree(
                        cases,
                        distanceMm => [distanceMm, -distanceMm],
                        (region, distanceMm, errorMm) =>
                            errorMm == 0
                                ? (distanceMm > 0 ? Closing.Of(region, distanceMm) : Opening.Of(region, -distanceMm))
                                : Offset.Of(
                                    Offset.Of(region, distanceMm + errorMm),
                                    -distanceMm + (Math.Sign(errorMm) * JoinMm)
                                )
                    ),
                iter: 1
            );

    [Fact]
    public void Rounds_of_every_corner_agree_with_the_opening_in_area_length_and_place() =>
        Gen.Select(AnyRegion.WithSharpCorners, Gen.Double[0.1, 1.5])
            .Select((region, radiusMm) => (Region: region, DistanceMm: radiusMm))
            .Array[Regions]
            .Sample(
                cases =>
                    AssertAgree(
                        cases,
                        radiusMm => [-radiusMm, radiusMm],
                        (region, radiusMm, errorMm) =>
                            errorMm == 0
                                ? [new Region(RoundedEverywhere(region.Outlines.Single(), radiusMm))]
                                : Offset.Of(
                                    Offset.Of(region, -radiusMm + errorMm),
                                    radiusMm + (Math.Sign(errorMm) * JoinMm)
                                )
                    ),
                iter: 1
            );

    /// <summary>The outline with its corners rounded one after another.</summary>
    private static Outline RoundedEverywhere(Outline outline, double radiusMm)
    {
        for (int corner = SharpCorner(outline); corner >= 0; corner = SharpCorner(outline))
        {
            (CutOutline? cut, CutFailure? failure) = Rounding.Of(
                outline,
                corner,
                (corner + 1) % outline.Edges.Length,
                radiusMm
            );
            Assert.Null(failure);
            outline = cut!.Outline;
        }

        return outline;
    }

    /// <summary>The first edge that ends at a corner; -1 when each runs on into the next.</summary>
    private static int SharpCorner(Outline outline) =>
        Enumerable
            .Range(0, outline.Edges.Length)
            .FirstOrDefault(
                i =>
                    outline.Edges[i].TangentAt(1).Dot(outline.Edges[(i + 1) % outline.Edges.Length].TangentAt(0))
                    < 1 - 1e-6,
                -1
            );

    private static void AssertAgree(
        (Region Region, double DistanceMm)[] cases,
        Func<double, double[]> steps,
        Func<Region, double, double, ImmutableArray<Region>> exact
    )
    {
        ImmutableArray<ImmutableArray<Outline>> answers = PolygonReferee.Run(
            cases.Select(one => (one.Region, steps(one.DistanceMm)))
        );
        for (int i = 0; i < cases.Length; i++)
        {
            (Region region, double distanceMm) = cases[i];
            Bounds bounds = new(
                exact(region, distanceMm, -ErrorMm),
                exact(region, distanceMm, 0),
                exact(region, distanceMm, ErrorMm)
            );
            try
            {
                bounds.AssertHold(answers[i]);
            }
            catch (Xunit.Sdk.XunitException broken)
            {
                throw new InvalidOperationException(Drawn.Text(cases[i]), broken);
            }
        }
    }

    private sealed record Bounds(ImmutableArray<Region> Low, ImmutableArray<Region> Exact, ImmutableArray<Region> High)
    {
        private const double StepMm = 0.05;

        public void AssertHold(ImmutableArray<Outline> polygons)
        {
            double areaMm2 = polygons.Sum(polygon => polygon.SignedAreaMm2);
            Assert.InRange(areaMm2, Area(Low) - 1e-6, Area(High) + 1e-6);

            double lengthMm = polygons.Sum(polygon => polygon.PerimeterMm);
            double slackMm = Math.Max(Math.Abs(Length(Low) - Length(Exact)), Math.Abs(Length(High) - Length(Exact)));
            double turning = OutlinesOf(Exact).Sum(Turning);
            Assert.InRange(
                lengthMm,
                Length(Exact) - slackMm - (turning * ErrorMm),
                Length(Exact) + slackMm + (turning * ErrorMm)
            );

            ImmutableArray<Outline> outlines = [.. OutlinesOf(Exact)];
            double apartMm = Math.Max(
                Hausdorff(outlines, [.. OutlinesOf(Low)]),
                Hausdorff(outlines, [.. OutlinesOf(High)])
            );
            Assert.InRange(Hausdorff(outlines, polygons), 0, apartMm + ErrorMm);
        }

        private static IEnumerable<Outline> OutlinesOf(ImmutableArray<Region> regions) =>
            regions.SelectMany(region => region.Outlines);

        private static double Area(ImmutableArray<Region> regions) => regions.Sum(region => region.AreaMm2);

        private static double Length(ImmutableArray<Region> regions) => regions.Sum(region => region.PerimeterMm);

        /// <summary>All an outline turns along arcs and at corners, in radians, either way.</summary>
        private static double Turning(Outline outline)
        {
            double turning = 0;
            for (int i = 0; i < outline.Edges.Length; i++)
            {
                Vector arriving = outline.Edges[i].TangentAt(1);
                Vector leaving = outline.Edges[(i + 1) % outline.Edges.Length].TangentAt(0);
                turning += Math.Abs(Math.Atan2(arriving.Cross(leaving), arriving.Dot(leaving)));
                turning += Math.Abs(outline.Edges[i].Sweep.Radians);
            }

            return turning;
        }

        private static double Hausdorff(ImmutableArray<Outline> a, ImmutableArray<Outline> b) =>
            a.IsEmpty || b.IsEmpty
                ? (a.Length == b.Length ? 0 : double.PositiveInfinity)
                : Math.Max(OneWay(a, b), OneWay(b, a));

        private static double OneWay(ImmutableArray<Outline> from, ImmutableArray<Outline> to) =>
            from.SelectMany(outline => outline.Edges)
                .SelectMany(PointsOn)
                .Max(p => to.Min(outline => Distance.Between(p, outline).DistanceMm));

        private static IEnumerable<Point> PointsOn(Edge edge)
        {
            int steps = 1 + (int)(edge.LengthMm / StepMm);
            return Enumerable.Range(0, steps).Select(i => edge.PointAt((double)i / steps));
        }
    }
}
