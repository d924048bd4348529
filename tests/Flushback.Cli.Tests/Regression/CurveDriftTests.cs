using Flushback.Cli.Regression.Baselines;

namespace Flushback.Cli.Tests.Regression;

/// <summary>Where one lift is off another: by curves whose differences are known.</summary>
public sealed class CurveDriftTests
{
    [Fact]
    public void Curves_that_are_off_by_no_more_than_is_allowed_are_the_same()
    {
        Assert.Empty(CurveDrift.Between(Curve(), Curve()));
        Assert.Empty(CurveDrift.Between(Curve(), Curve((60, 1.0005))));
    }

    [Fact]
    public void Angles_beside_each_other_are_one_stretch_and_its_worst_is_told()
    {
        IReadOnlyList<CurveDrift> drifts = CurveDrift.Between(
            Curve(),
            Curve((40, 1.001), (45, 0.9), (50, 1.05), (60, 1.002))
        );

        Assert.Equal([new CurveDrift(40, 50, 45, 1, 0.9), new CurveDrift(60, 60, 60, 1, 1.002)], drifts);
    }

    [Fact]
    public void Beyond_the_end_of_either_curve_nothing_is_compared()
    {
        KeptCurve shorter = Curve((5, null), (170, null), (175, null));

        Assert.Empty(CurveDrift.Between(Curve(), shorter));
        Assert.Empty(CurveDrift.Between(shorter, Curve()));
    }

    [Fact]
    public void A_gap_between_the_ends_is_a_difference_either_way()
    {
        KeptCurve gap = Curve((40, null), (45, null));

        Assert.Equal([new CurveDrift(40, 45, 40, 1, null)], CurveDrift.Between(Curve(), gap));
        Assert.Equal([new CurveDrift(40, 45, 40, null, 1)], CurveDrift.Between(gap, Curve()));
        Assert.Empty(CurveDrift.Between(gap, gap));
    }

    [Fact]
    public void What_is_off_and_what_is_missing_are_stretches_of_their_own()
    {
        IReadOnlyList<CurveDrift> drifts = CurveDrift.Between(Curve(), Curve((40, 1.1), (45, null), (50, 1.1)));

        Assert.Equal([(40, 40), (45, 45), (50, 50)], drifts.Select(drift => (drift.FromDeg, drift.ToDeg)));
    }

    // A millimetre all along, but for some angles.
    private static KeptCurve Curve(params (int Angle, double? LiftMm)[] otherwise) =>
        new(
            "lift",
            [
                .. KeptCurve.Angles.Select(angle =>
                    Array.FindIndex(otherwise, other => other.Angle == angle) is >= 0 and int i
                        ? otherwise[i].LiftMm
                        : 1
                ),
            ],
            WithinMm: 0.000501
        );
}
