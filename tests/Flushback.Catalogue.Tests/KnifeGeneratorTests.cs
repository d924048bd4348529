using CsCheck;
using Flushback.Catalogue.Designs;
using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using NetTopologySuite.Geometries;
using Xunit;

namespace Flushback.Catalogue.Tests;

public class KnifeGeneratorTests
{
    [Fact]
    public void Every_knife_has_simple_outlines_named_edge_by_edge() =>
        KnifeGenerator.Designs.Sample(design =>
        {
            Knife knife = design.ToKnife();
            return knife.Blade.IsCounterClockwise
                && knife.Spring.IsCounterClockwise
                && knife.BladeFaces.Length == knife.Blade.Edges.Length
                && knife.SpringFaces.Length == knife.Spring.Edges.Length
                && Flattened(knife.Blade).IsValid
                && Flattened(knife.Spring).IsValid
                && Flattened(knife.Handle!).IsValid;
        });

    [Fact]
    public void No_knife_overlaps_as_drawn() =>
        KnifeGenerator.Designs.Sample(design =>
        {
            Knife knife = design.ToKnife();
            return Flattened(knife.Blade).Intersection(Flattened(knife.Spring)).Area < 1e-6;
        });

    [Fact]
    public void No_knife_has_an_edge_too_short_to_draw() =>
        KnifeGenerator.Designs.Sample(design =>
        {
            Knife knife = design.ToKnife();
            return knife.Blade.Edges.Concat(knife.Spring.Edges).All(edge => edge.LengthMm > 1e-3);
        });

    [Fact]
    public void The_same_seed_gives_the_same_knife() =>
        Assert.Equal(KnifeGenerator.FromSeed(7), KnifeGenerator.FromSeed(7));

    [Fact]
    public void Half_stops_round_tangs_undercuts_square_shoulders_hollows_and_rounds_all_come_up()
    {
        KnifeDesign[] knives = [.. KnifeGenerator.First(40)];

        Assert.InRange(knives.Count(k => k.Tang.HasHalfStop), 15, 35);
        Assert.InRange(knives.Count(k => k.Blade.UndercutDeg == 90), 5, 20);
        Assert.InRange(knives.Count(k => k.Tang.ClosedRelief.DepthMm > 0), 15, 35);
        Assert.InRange(knives.Count(k => k.Tang.OpenCornerRadiusMm > 0), 10, 30);
        Assert.InRange(knives.Count(k => k.Blade.CornerReliefMm > 0), 10, 30);
    }

    [Fact]
    public void Each_of_the_first_twelve_knives_opens_to_a_stop_near_straight()
    {
        foreach (KnifeDesign design in KnifeGenerator.First(12))
        {
            BenchPose? stop = BruteForceBench.For(design.ToKnife()).OpenStop();

            Assert.NotNull(stop);
            Assert.InRange(stop.Value.BladeAngle.Degrees, -6, 1);
        }
    }

    [Fact]
    public void A_closed_blade_has_its_tip_inside_the_handle() =>
        KnifeGenerator.Designs.Sample(design =>
        {
            Coordinate tip = new(-design.Blade.LengthMm, -design.Blade.TipMm);
            return Flattened(design.ToKnife().Handle!).Contains(new NetTopologySuite.Geometries.Point(tip));
        });

    private static Polygon Flattened(Outline outline) =>
        new(new LinearRing(new Flattening(1e-5, 1e-5).Ring(outline, _ => true)));
}
