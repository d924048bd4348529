using Flushback.Reports.Tests.Fixtures;
using Microsoft.Playwright;

namespace Flushback.Reports.Tests.Browser;

public sealed class PageInABrowserTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const int Phone = 380;
    private const int Desk = 1280;

    // A4 less margins of 10 mm, at 96 to the inch.
    private const int Paper = 718;

    [Theory]
    [MemberData(nameof(Cases.Names), MemberType = typeof(Cases))]
    public async Task The_page_opens_without_a_complaint_and_fetches_nothing(string name)
    {
        await using OpenPage open = await chromium.OpenAsync(Cases.Page(name), Desk);

        Assert.Empty(open.Complaints);
    }

    [Theory]
    [InlineData(Phone)]
    [InlineData(Desk)]
    public async Task The_three_stops_the_chart_and_the_knife_are_seen(int width)
    {
        await using OpenPage open = await chromium.OpenAsync(Cases.Page("reads-badly"), width);

        foreach (string id in new[] { "stop-open", "stop-half-stop", "stop-closed", "whole-knife" })
        {
            await IsSeenAsync(open.Page.Locator($"svg#{id}"));
        }

        await IsSeenAsync(open.Page.Locator(width == Phone ? "svg#lift-chart-narrow" : "svg#lift-chart"));
        Assert.False(
            await open.Page.Locator(width == Phone ? "svg#lift-chart" : "svg#lift-chart-narrow").IsVisibleAsync()
        );
    }

    [Theory]
    [MemberData(nameof(Cases.Names), MemberType = typeof(Cases))]
    public async Task No_word_runs_out_of_a_phone(string name)
    {
        await using OpenPage open = await chromium.OpenAsync(Cases.Page(name), Phone);

        int width = await open.Page.EvaluateAsync<int>(Probes.Width);
        string[] outside = await open.Page.EvaluateAsync<string[]>(Probes.OutsideTheirPlace);

        Assert.Equal(Phone, width);
        Assert.Empty(outside);
    }

    [Theory]
    [InlineData("reads-badly", ColorScheme.Light)]
    [InlineData("reads-badly", ColorScheme.Dark)]
    [InlineData("sets-in-the-handle", ColorScheme.Light)]
    [InlineData("sets-in-the-handle", ColorScheme.Dark)]
    public async Task Words_stand_out_from_their_ground(string name, ColorScheme scheme)
    {
        await using OpenPage open = await chromium.OpenAsync(Cases.Page(name), Desk, scheme);

        string[] faint = await open.Page.EvaluateAsync<string[]>(Probes.FaintWords);

        Assert.Empty(faint);
    }

    [Fact]
    public async Task A_long_name_without_a_space_stays_on_a_phone()
    {
        string html = HtmlReport.Write(new string('W', 300), SampleReports.InOrder(), []);
        await using OpenPage open = await chromium.OpenAsync(html, Phone);

        Assert.Equal(Phone, await open.Page.EvaluateAsync<int>(Probes.Width));
    }

    [Fact]
    public async Task A_script_in_the_name_does_not_run()
    {
        string html = HtmlReport.Write(
            "<script>document.title='run'</script>",
            SampleReports.InOrder(),
            ["<img src=x onerror=document.title='run'>"]
        );
        await using OpenPage open = await chromium.OpenAsync(html, Desk);

        Assert.Equal("<script>document.title='run'</script>: bench reading", await open.Page.TitleAsync());
        Assert.Equal(0, await open.Page.Locator("script, img").CountAsync());
    }

    [Theory]
    [MemberData(nameof(Cases.Names), MemberType = typeof(Cases))]
    public async Task Words_in_the_pictures_stay_inside_them(string name)
    {
        await using OpenPage open = await chromium.OpenAsync(Cases.Page(name), Desk);
        string[] cutOnADesk = await open.Page.EvaluateAsync<string[]>(Probes.CutInPictures);

        await open.Page.SetViewportSizeAsync(Phone, 900);
        string[] cutOnAPhone = await open.Page.EvaluateAsync<string[]>(Probes.CutInPictures);

        Assert.Empty(cutOnADesk);
        Assert.Empty(cutOnAPhone);
    }

    [Theory]
    [MemberData(nameof(Cases.Names), MemberType = typeof(Cases))]
    public async Task On_paper_no_word_is_cut(string name)
    {
        await using OpenPage open = await chromium.OpenAsync(Cases.Page(name), Paper);
        await open.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });

        Assert.Equal(Paper, await open.Page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.OutsideTheirPlace));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.CutInPictures));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.OverlapsInCharts));
    }

    [Theory]
    [MemberData(nameof(Cases.HandleNames), MemberType = typeof(Cases))]
    public async Task The_charts_of_the_handle_are_seen_and_no_two_words_on_them_overlap(string name)
    {
        foreach (int width in new[] { Phone, Desk })
        {
            await using OpenPage open = await chromium.OpenAsync(Cases.Page(name), width);
            foreach (string id in new[] { "handle-lift", "handle-torque", "handle-energy", "handle-stress" })
            {
                await IsSeenAsync(open.Page.Locator($"svg#{id}"));
            }

            Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.OverlapsInCharts));
        }
    }

    [Theory]
    [InlineData("reads-badly", 780)]
    [InlineData("reads-badly", 1000)]
    [InlineData("reads-badly", Desk)]
    [InlineData("sets-in-the-handle", 780)]
    [InlineData("sets-in-the-handle", 1000)]
    [InlineData("sets-in-the-handle", Desk)]
    public async Task The_tables_of_readings_break_no_word(string name, int width)
    {
        await using OpenPage open = await chromium.OpenAsync(Cases.Page(name), width);

        int rows = await open.Page.EvaluateAsync<int>(
            "Math.max(...[...document.querySelectorAll('.dial tbody tr')].map(row => row.getBoundingClientRect().height))"
        );

        Assert.Equal(width, await open.Page.EvaluateAsync<int>(Probes.Width));
        Assert.InRange(rows, 1, 90);
    }

    private static async Task IsSeenAsync(ILocator picture)
    {
        Assert.True(await picture.IsVisibleAsync());
        LocatorBoundingBoxResult? box = await picture.BoundingBoxAsync();
        Assert.NotNull(box);
        Assert.InRange(box.Width, 200, Desk);
        Assert.InRange(box.Height, 100, Desk);
    }
}
