using CsCheck;
using Flushback.Dxf.Chaining;
using Flushback.Geometry;

namespace Flushback.Dxf.Tests;

/// <summary>Points near each other are found as if each had been compared with every other.</summary>
public sealed class PointClusterTests
{
    [Fact]
    public void Groups_are_those_of_comparing_every_pair() =>
        Gen.Select(
                Gen.Select(Gen.Double[-1, 1], Gen.Double[-1, 1]).Array[0, 120],
                Gen.Double[0.01, 0.3],
                Gen.Double[-1e5, 1e5],
                Gen.Double[-1e5, 1e5]
            )
            .Sample(
                (places, distance, x, y) =>
                {
                    Point[] points = [.. places.Select(place => new Point(x + place.Item1, y + place.Item2))];
                    Assert.Equal(ByPairs(points, distance), PointClusters.Of(points, distance));
                }
            );

    [Theory]
    [InlineData(-0.01)]
    [InlineData(0.0)]
    [InlineData(0.04)]
    [InlineData(12345.68)]
    public void A_pair_is_found_across_the_border_of_a_cell(double x)
    {
        Point[] points = [new(x - 0.003, -0.003), new(50, 50), new(x + 0.003, 0.003)];
        Assert.Equal([0, 2], Assert.Single(PointClusters.Of(points, 0.01)));
    }

    private static List<List<int>> ByPairs(Point[] points, double distance)
    {
        int[] group = [.. Enumerable.Range(0, points.Length)];
        for (int i = 0; i < points.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                if (points[i].IsWithin(distance, points[j]))
                {
                    (int from, int to) = (Math.Max(group[i], group[j]), Math.Min(group[i], group[j]));
                    group = Array.ConvertAll(group, one => one == from ? to : one);
                }
            }
        }

        return
        [
            .. Enumerable
                .Range(0, points.Length)
                .GroupBy(i => group[i])
                .Where(members => members.Count() > 1)
                .Select(members => members.ToList()),
        ];
    }
}
