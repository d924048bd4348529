using System.Collections.Immutable;
using CsCheck;
using Flushback.Geometry.Offsets;
using Flushback.Geometry.Tests.Shapes;

namespace Flushback.Geometry.Tests.Offsets;

/// <summary>Offsets do not depend on how and where an area is drawn, and come one after another as they should.</summary>
public class OffsetInvarianceTests
{
    /// <summary>What a border may gain or lose by the tolerance of places where it only just touches itself.</summary>
    private const double TouchingMm2 = 1e-5;

    [Fact]
    public void A_moved_or_mirrored_area_has_the_same_offset() =>
        Gen.Select(AnyRegion.WithDistance, Any.Motion)
            .Sample(
                (offset, motion) =>
                {
                    ImmutableArray<Region> plain = Offset.Of(offset.Region, offset.DistanceMm);
                    ImmutableArray<Region> moved = Offset.Of(offset.Region.Transformed(motion), offset.DistanceMm);
                    AssertSameMeasures(plain, moved);
                }
            );

    [Fact]
    public void It_matters_not_where_and_which_way_the_outlines_are_drawn() =>
        Gen.Select(AnyRegion.WithDistance, Gen.Int[1, 20])
            .Sample(
                (offset, vertex) =>
                {
                    Region redrawn = new(
                        offset.Region.Border.StartingAt(vertex).Reversed(),
                        [.. offset.Region.Holes.Select(hole => hole.StartingAt(vertex).Reversed())]
                    );
                    AssertSameMeasures(
                        Offset.Of(offset.Region, offset.DistanceMm),
                        Offset.Of(redrawn, offset.DistanceMm)
                    );
                }
            );

    [Fact]
    public void An_edge_drawn_as_two_changes_nothing() =>
        Gen.Select(AnyRegion.WithDistance, Gen.Int[0, 20], Gen.Double[0.1, 0.9])
            .Sample(
                (offset, edge, fraction) =>
                {
                    Region split = new(offset.Region.Border.WithEdgeSplit(edge, fraction), offset.Region.Holes);
                    AssertSameMeasures(
                        Offset.Of(offset.Region, offset.DistanceMm),
                        Offset.Of(split, offset.DistanceMm)
                    );
                }
            );

    /// <summary>Dilations by discs add up, and so do erosions (Minkowski sums of discs).</summary>
    [Fact]
    public void Two_offsets_the_same_way_are_one_by_their_sum() =>
        Gen.Select(AnyRegion.WithDistance, Gen.Double[0.1, 1])
            .Sample(
                (offset, share) =>
                {
                    ImmutableArray<Region> first = Offset.Of(offset.Region, offset.DistanceMm * share);
                    ImmutableArray<Region> both = Offset.Of(first, offset.DistanceMm * (1 - share));
                    Near.Equal(Area(Offset.Of(offset.Region, offset.DistanceMm)), Area(both), TouchingMm2);
                }
            );

    [Fact]
    public void The_area_grows_with_the_distance() =>
        Gen.Select(AnyRegion.WithDistance, AnyRegion.Distance)
            .Sample(
                (offset, other) =>
                {
                    double low = Area(Offset.Of(offset.Region, Math.Min(offset.DistanceMm, other)));
                    double high = Area(Offset.Of(offset.Region, Math.Max(offset.DistanceMm, other)));
                    Assert.InRange(low, 0, high + TouchingMm2);
                }
            );

    private static void AssertSameMeasures(ImmutableArray<Region> expected, ImmutableArray<Region> actual) =>
        Near.Equal(Area(expected), Area(actual), TouchingMm2);

    private static double Area(ImmutableArray<Region> regions) => regions.Sum(region => region.AreaMm2);
}
