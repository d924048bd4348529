using System.Text.RegularExpressions;
using Flushback.Geometry;
using Flushback.Geometry.Distances;
using Flushback.Patterns.Pairs;
using Flushback.Reports.Pictures;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests;

public sealed partial class PairHtmlReportTests
{
    [Theory]
    [InlineData("shared-crowded")]
    [InlineData("jack")]
    public void The_page_is_the_one_kept(string name) =>
        GoldenFile.Matches($"pair-{name}.html", SamplePairs.Page(name));

    [Theory]
    [MemberData(nameof(SamplePairs.Names), MemberType = typeof(SamplePairs))]
    public void Every_id_is_given_once_and_every_reference_finds_one(string name)
    {
        string page = SamplePairs.Page(name);
        string[] ids = [.. IdAttribute().Matches(page).Select(match => match.Groups[1].Value)];
        IEnumerable<string> referred = LabelledBy().Matches(page).SelectMany(match => match.Groups[1].Value.Split(' '));

        Assert.Equal(ids.Distinct(), ids);
        Assert.Empty(referred.Except(ids));
    }

    [Theory]
    [MemberData(nameof(SamplePairs.Names), MemberType = typeof(SamplePairs))]
    public void Both_blades_have_their_stops_their_lift_and_their_picture(string name)
    {
        string page = SamplePairs.Page(name);
        DrawnPair pair = SamplePairs.Of(name);

        Assert.All(
            new[] { ("first", pair.FirstBench), ("second", pair.SecondBench) },
            blade =>
            {
                string[] stops = blade.Item2.HasHalfStop ? ["open", "half-stop", "closed"] : ["open", "closed"];
                Assert.All(
                    stops.Select(stop => $"stop-{stop}").Concat(["lift-chart", "whole-knife"]),
                    id => Assert.Contains($"id=\"{blade.Item1}-{id}\"", page, StringComparison.Ordinal)
                );
            }
        );
    }

    [Fact]
    public void A_shared_spring_is_said_to_be_read_on_the_bench_only() =>
        Assert.Contains("its pull and stress are not worked out", SamplePairs.Page("shared"), StringComparison.Ordinal);

    [Theory]
    [InlineData("shared-crowded", "Will not work as drawn: ")]
    [InlineData("jack", "In order: ")]
    public void The_verdict_is_that_of_both_blades(string name, string begins)
    {
        string page = SamplePairs.Page(name);

        Assert.Contains($"</span>{begins}", page, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("shared")]
    [InlineData("shared-short")]
    public void Drawn_bent_the_shared_spring_touches_both_closed_blades_and_overlaps_neither(string name)
    {
        const double touchesMm = 1e-6;
        DrawnPair pair = SamplePairs.Of(name);
        PairPose pose = new(pair, pair.FirstBench.Stops[^1].RestAngle, pair.SecondBench.Stops[^1].RestAngle);

        Outline spring = Outline.FromVertices([
            .. pose.SharedSpring.Select(edge => new Vertex(edge.Start, edge.Bulge)),
        ]);

        // Within what the halves turn against each other at the centre pin, the chain has no gap.
        Assert.All(
            pose.SharedSpring.Zip(spring.Edges),
            both => Assert.True(both.First.End.IsWithin(0.25, both.Second.End))
        );
        Assert.All(
            new[]
            {
                pair.First.Knife.Blade.Transformed(pose.FirstBlade),
                pair.Second.Knife.Blade.Transformed(pose.SecondBlade),
            },
            blade =>
            {
                Assert.InRange(Distance.Between(spring, blade).DistanceMm, 0, touchesMm);
                Assert.All(
                    blade.Edges.Select(edge => edge.Start),
                    corner => Assert.True(spring.SignedDistanceMm(corner) < touchesMm)
                );
            }
        );
    }

    [GeneratedRegex(" id=\"([^\"]*)\"")]
    private static partial Regex IdAttribute();

    [GeneratedRegex(" aria-labelledby=\"([^\"]*)\"")]
    private static partial Regex LabelledBy();
}
