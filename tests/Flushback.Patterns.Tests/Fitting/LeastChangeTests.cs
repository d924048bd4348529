using CsCheck;
using Flushback.Patterns.Fitting;

namespace Flushback.Patterns.Tests.Fitting;

/// <summary>The shortest change under straight demands, against what an optimum has to be: no outside source.</summary>
public sealed class LeastChangeTests
{
    private const int Levers = 3;
    private static readonly double[] _least = [-0.6, -0.5, -0.4];
    private static readonly double[] _most = [0.5, 0.7, 0.3];

    private static readonly double[] _lengths = [0.5, 0.05, 0.005];

    private static readonly Gen<Plane> _plane = Gen.Double[-1, 1]
        .Array[Levers]
        .Where(slope => slope.Sum(s => s * s) > 0.05)
        .Select(Gen.Double[-0.3, 0.4], (slope, level) => new Plane("", slope, level));

    [Fact]
    public void It_meets_every_demand_and_nothing_near_it_that_does_is_shorter() =>
        Gen.Select(_plane.Array[0, 6], Gen.Double[-1, 1].Array[Levers].Array[60])
            .Sample(
                (demands, steps) =>
                {
                    if (LeastChange.Meeting(demands, _least, _most).Change is not { } change)
                    {
                        return;
                    }

                    Assert.True(Meets(demands, change, 1e-6));
                    foreach (double[] step in steps)
                    {
                        foreach (double length in _lengths)
                        {
                            double[] other = [.. change.Select((c, i) => c + (length * step[i]))];
                            Assert.True(!Meets(demands, other, 0) || Length(other) > Length(change) - 1e-6);
                        }
                    }
                }
            );

    [Fact]
    public void Where_it_finds_none_there_is_none_among_many_and_the_weights_show_why() =>
        Gen.Select(_plane.Array[1, 6], Gen.Double[0, 1].Array[Levers].Array[200])
            .Sample(
                (demands, places) =>
                {
                    (double[]? change, double[] weights) = LeastChange.Meeting(demands, _least, _most);
                    if (change is not null)
                    {
                        return;
                    }

                    Assert.Contains(weights, weight => weight > 0);
                    foreach (double[] place in places)
                    {
                        double[] other = [.. place.Select((p, i) => _least[i] + (p * (_most[i] - _least[i])))];
                        Assert.False(Meets(demands, other, -1e-6));
                    }
                }
            );

    [Fact]
    public void Without_demands_nothing_is_changed() =>
        Assert.All(LeastChange.Meeting([], _least, _most).Change!, change => Assert.Equal(0, change, 1e-12));

    [Fact]
    public void A_single_demand_is_met_at_the_foot_of_the_perpendicular()
    {
        // Closed form: the point of a plane nearest to the origin is slope times level over the slope's square.
        Plane plane = new("", [0.3, -0.4, 0], 0.1);

        double[] change = LeastChange.Meeting([plane], _least, _most).Change!;

        Assert.Equal(0.12, change[0], 1e-9);
        Assert.Equal(-0.16, change[1], 1e-9);
        Assert.Equal(0, change[2], 1e-9);
    }

    private static bool Meets(IEnumerable<Plane> demands, double[] change, double shortBy) =>
        demands.All(demand => Plane.Product(demand.Slope, change) >= demand.Level - shortBy)
        && change.Select((c, i) => c >= _least[i] - shortBy && c <= _most[i] + shortBy).All(inside => inside);

    private static double Length(double[] change) => Math.Sqrt(change.Sum(c => c * c));
}
