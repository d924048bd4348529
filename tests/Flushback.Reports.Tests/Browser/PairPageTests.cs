using Flushback.Patterns.Pairs;
using Flushback.Reports.Tests.Fixtures;
using Microsoft.Playwright;

namespace Flushback.Reports.Tests.Browser;

/// <summary>The page of two blades as a browser shows it.</summary>
public sealed class PairPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const int Phone = 380;
    private const int Desk = 1280;

    // A4 less margins of 10 mm, at 96 to the inch.
    private const int Paper = 718;

    [Theory]
    [MemberData(nameof(SamplePairs.Names), MemberType = typeof(SamplePairs))]
    public async Task It_opens_without_a_complaint_and_no_word_is_cut_on_a_desk_or_a_phone(string name)
    {
        await using OpenPage open = await chromium.OpenAsync(SamplePairs.Page(name), Desk);
        Assert.Empty(open.Complaints);
        foreach (int width in new[] { Desk, Phone })
        {
            await open.Page.SetViewportSizeAsync(width, 900);

            Assert.Equal(width, await open.Page.EvaluateAsync<int>(Probes.Width));
            Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.OutsideTheirPlace));
            Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.CutInPictures));
        }
    }

    [Theory]
    [MemberData(nameof(SamplePairs.Names), MemberType = typeof(SamplePairs))]
    public async Task On_paper_no_word_is_cut(string name)
    {
        await using OpenPage open = await chromium.OpenAsync(SamplePairs.Page(name), Paper);
        await open.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });

        Assert.Equal(Paper, await open.Page.EvaluateAsync<int>(Probes.Width));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.OutsideTheirPlace));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.CutInPictures));
    }

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task Words_stand_out_from_their_ground(ColorScheme scheme)
    {
        await using OpenPage open = await chromium.OpenAsync(SamplePairs.Page("shared-crowded"), Desk, scheme);

        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.FaintWords));
    }

    [Theory]
    [MemberData(nameof(SamplePairs.Names), MemberType = typeof(SamplePairs))]
    public async Task Both_blades_are_seen_closed_and_each_of_them_open(string name)
    {
        await using OpenPage open = await chromium.OpenAsync(SamplePairs.Page(name), Desk);
        foreach (string id in new[] { "both-closed", "first-open", "second-open" })
        {
            Assert.True(await open.Page.Locator($"svg#{id} path.fb-blade").IsVisibleAsync());
            Assert.True(await open.Page.Locator($"svg#{id} path.fb-blade-2").IsVisibleAsync());
        }

        // Seen from the first blade's side an open blade runs out to the right, of the second one at the other end to the left.
        double[] first = await RightAndLeftAsync(open, "first-open", "fb-blade");
        double[] second = await RightAndLeftAsync(open, "second-open", "fb-blade-2");
        Assert.True(first[0] > 0);
        Assert.Equal(SamplePairs.Of(name).SecondToFirst.Mirrored, second[1] > 0);
    }

    [Fact]
    public async Task The_gap_is_drawn_from_one_blade_to_the_other_at_its_length()
    {
        DrawnPair pair = SamplePairs.Of("shared-short");
        await using OpenPage open = await chromium.OpenAsync(SamplePairs.Page("shared-short"), Desk);

        double[] seen = await open.Page.EvaluateAsync<double[]>(
            """
            () => {
                const picture = document.querySelector('svg#gap'), line = picture.querySelector('line.fb-normal');
                const [x1, y1, x2, y2] = ['x1', 'y1', 'x2', 'y2'].map(name => Number(line.getAttribute(name)));
                const isOn = (name, x, y) => picture.querySelector(`path.${name}`).isPointInStroke(new DOMPoint(x, y)) ? 1 : 0;
                return [Math.hypot(x2 - x1, y2 - y1), isOn('fb-blade', x1, y1), isOn('fb-blade-2', x2, y2)];
            }
            """
        );

        // The picture shows six times the gap, or 3 mm, across its 560 units.
        double gapMm = pair.Clearance.Least.DistanceMm;
        Assert.True(gapMm > 0);
        Assert.Equal(gapMm * 560 / Math.Max(6 * gapMm, 3), seen[0], 0.05);
        Assert.Equal([1, 1], seen[1..]);
    }

    /// <summary>How far a part reaches out of the handle to the right and to the left, in pixels.</summary>
    private static async Task<double[]> RightAndLeftAsync(OpenPage open, string id, string part) =>
        await open.Page.EvaluateAsync<double[]>(
            $$"""
            () => {
                const box = name => document.querySelector(`svg#{{id}} path.${name}`).getBoundingClientRect();
                const handle = box('fb-handle'), blade = box('{{part}}');
                return [blade.right - handle.right, handle.left - blade.left];
            }
            """
        );
}
