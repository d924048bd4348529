using System.Collections.Immutable;
using CsCheck;
using Flushback.Geometry.Approximation;
using Flushback.Geometry.Distances;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Approximation;

public class FlatteningTests
{
    private static readonly Gen<double> Sagitta = Gen.Double[-4, 0].Select(power => Math.Pow(10, power));

    private static readonly Gen<FlatteningBias> Bias = Gen.Bool.Select(centred =>
        centred ? FlatteningBias.Centred : FlatteningBias.PointsOnCurve
    );

    [Fact]
    public void Points_and_chords_stay_within_the_sagitta_of_the_edge() =>
        Gen.Select(Any.Edge, Sagitta, Bias)
            .Sample(
                (edge, sagitta, bias) =>
                {
                    ImmutableArray<Point> points = Flattening.PointsOf(edge, sagitta, bias);
                    for (int i = 1; i < points.Length; i++)
                    {
                        for (int j = 0; j <= 8; j++)
                        {
                            Point onChord = new Edge(points[i - 1], points[i]).PointAt(j / 8.0);
                            Assert.InRange(Distance.Between(onChord, edge).DistanceMm, 0, sagitta * (1 + 1e-9) + 1e-9);
                        }
                    }
                }
            );

    [Fact]
    public void The_ends_stay_where_they_are() =>
        Gen.Select(Any.Edge, Sagitta, Bias)
            .Sample(
                (edge, sagitta, bias) =>
                {
                    ImmutableArray<Point> points = Flattening.PointsOf(edge, sagitta, bias);
                    Assert.Equal(edge.Start, points[0]);
                    Assert.Equal(edge.End, points[^1]);
                }
            );

    [Fact]
    public void A_line_is_its_two_ends() =>
        Assert.Equal(2, Flattening.PointsOf(new Edge(new Point(0, 0), new Point(9, 9)), 1e-6).Length);

    [Fact]
    public void Points_on_the_curve_are_on_the_curve_and_no_more_than_needed()
    {
        ImmutableArray<Point> points = Flattening.PointsOf(Named.Disc(10), 0.01);
        Assert.All(points, p => Near.Equal(10, p.DistanceTo(Point.Origin)));

        // Chord error R (1 - cos(pi/n)) for n chords to a circle (elementary geometry).
        Assert.True(10 * (1 - Math.Cos(Math.PI / points.Length)) <= 0.01);
        Assert.True(10 * (1 - Math.Cos(Math.PI / (points.Length - 2))) > 0.01);
    }

    [Fact]
    public void With_points_on_the_curve_a_disc_loses_area_and_a_hollow_gains_it()
    {
        Assert.True(AreaOf(Flattening.PointsOf(Named.Disc(10), 0.1)) < Named.Disc(10).AreaMm2);
        Outline hollow = Outline.FromVertices([
            new Vertex(0, 0, -0.3),
            new Vertex(10, 0),
            new Vertex(10, 9),
            new Vertex(0, 9),
        ]);
        Assert.True(AreaOf(Flattening.PointsOf(hollow, 0.1)) > hollow.AreaMm2);
    }

    [Fact]
    public void Centred_chords_miss_the_area_by_far_less_at_the_same_sagitta()
    {
        const double sagitta = 1e-3;
        double onCurve = AreaOf(Flattening.PointsOf(Named.Disc(10), sagitta)) - Named.Disc(10).AreaMm2;
        double centred =
            AreaOf(Flattening.PointsOf(Named.Disc(10), sagitta, FlatteningBias.Centred)) - Named.Disc(10).AreaMm2;
        Assert.InRange(centred / onCurve, 0.3, 0.6);
    }

    [Theory]
    [InlineData(0)]
    [InlineData(-1)]
    [InlineData(double.NaN)]
    public void A_sagitta_that_is_no_positive_number_is_refused(double sagitta)
    {
        Assert.Throws<ArgumentOutOfRangeException>(() => Flattening.PointsOf(Named.Disc(10), sagitta));
        Assert.Throws<ArgumentOutOfRangeException>(() => OutlineOverlap.AreaMm2(Named.Disc(1), Named.Disc(1), sagitta));
    }

    private static double AreaOf(ImmutableArray<Point> corners) =>
        Outline.FromVertices([.. corners.Select(p => new Vertex(p))]).AreaMm2;
}
