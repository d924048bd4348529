using CsCheck;
using Flushback.Geometry;
using Flushback.Geometry.Checking;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Passes.Tests;

/// <summary>What holds for every pass: metal is taken off, and only there, and nothing loses its name.</summary>
public sealed class RemovalTests
{
    // Ends nearer to one another than 1.5e-6 mm are joined.
    private const double RoundingMm = 2e-6;

    [Fact]
    public void A_pass_leaves_one_sound_outline_inside_the_one_before_and_counts_what_it_took() =>
        RandomPasses.OnKnives.Sample(
            (design, pass) =>
            {
                PassCase before = new(design);
                (PassResult? result, PassProblem? problem) = before.Try(pass);
                Assert.True(result is null != problem is null);
                if (result is null)
                {
                    Assert.EndsWith(".", problem!.Sentence, StringComparison.Ordinal);
                    return;
                }

                Outline old = OutlineOf(before.Knife, result.Removed.Part);
                Outline left = OutlineOf(result.Knife, result.Removed.Part);
                Assert.Empty(OutlineCheck.FlawsOf(left.Vertices.AsSpan(), GeometryTolerances.Default));
                foreach (Edge edge in left.Edges)
                {
                    foreach (double fraction in new[] { 0, 0.25, 0.5, 0.75 })
                    {
                        Assert.True(
                            old.SignedDistanceMm(edge.PointAt(fraction)) > -RoundingMm,
                            $"{pass} on {design.Name}: {edge} stands out of the outline before"
                        );
                    }
                }

                double closed = result.Removed.Regions.Sum(region => region.AreaMm2);
                Assert.Equal(old.AreaMm2 - left.AreaMm2, result.Removed.AreaMm2, 1e-9);
                Assert.Equal(result.Removed.AreaMm2, closed, 2e-5);
                Assert.All(result.Removed.Regions, region => Assert.True(region.IsCounterClockwise));
                Assert.Equal(result.Knife.Blade.Edges.Length, result.Knife.BladeFaces.Length);
                Assert.Equal(result.Knife.Spring.Edges.Length, result.Knife.SpringFaces.Length);
            },
            iter: 300
        );

    private static Outline OutlineOf(Knife knife, Part part) => part == Part.Blade ? knife.Blade : knife.Spring;
}
