using Flushback.Reports.Tests.Fixtures;
using Microsoft.Playwright;

namespace Flushback.Reports.Tests.Browser;

public sealed class TolerancePageTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const int Phone = 380;
    private const int Desk = 1280;

    [Theory]
    [MemberData(nameof(Studies.Names), MemberType = typeof(Studies))]
    public async Task The_page_opens_without_a_complaint_and_fetches_nothing(string name)
    {
        await using OpenPage open = await chromium.OpenAsync(Studies.Page(name), Desk);

        Assert.Empty(open.Complaints);
    }

    [Theory]
    [InlineData("tolerance-bench", 3)]
    [InlineData("tolerance-handle", 2)]
    public async Task There_is_a_histogram_a_reading_and_its_bars_stand_within_its_frame(string name, int readings)
    {
        await using OpenPage open = await chromium.OpenAsync(Studies.Page(name), Desk);
        const string Bars =
            "[...document.querySelectorAll('.histograms svg')].map(s => [...s.querySelectorAll('.fb-bar')]"
            + ".filter(b => b.getBoundingClientRect().width > 1 && b.getBoundingClientRect().height > 0).length)";
        int[] bars = await open.Page.EvaluateAsync<int[]>(Bars);

        Assert.Equal(readings, bars.Length);
        Assert.All(bars, count => Assert.InRange(count, 8, 36));
    }

    [Theory]
    [InlineData("tolerance-bench", Phone)]
    [InlineData("tolerance-handle", Phone)]
    [InlineData("tolerance-lost", Phone)]
    [InlineData("tolerance-bench", Desk)]
    [InlineData("tolerance-handle", Desk)]
    [InlineData("tolerance-lost", Desk)]
    public async Task The_page_is_no_wider_than_the_window_and_no_word_is_cut_in_a_picture(string name, int width)
    {
        await using OpenPage open = await chromium.OpenAsync(Studies.Page(name), width);

        Assert.Equal(width, await open.Page.EvaluateAsync<int>(Probes.Width));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.CutInPictures));
    }

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task Words_stand_out_from_their_ground_by_day_and_night(ColorScheme scheme)
    {
        await using OpenPage open = await chromium.OpenAsync(Studies.Page("tolerance-bench"), Desk, scheme);

        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.FaintWords));
    }
}
