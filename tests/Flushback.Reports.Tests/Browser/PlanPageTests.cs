using Flushback.Reports.Tests.Fixtures;
using Flushback.Reports.Tests.Print;
using Microsoft.Playwright;

namespace Flushback.Reports.Tests.Browser;

public sealed class PlanPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const int Phone = 380;
    private const int Desk = 1280;

    public static TheoryData<string, string> NamesAndPapers()
    {
        TheoryData<string, string> all = [];
        foreach (string name in Plans.All)
        {
            all.Add(name, "A4");
            all.Add(name, "Letter");
        }

        return all;
    }

    [Theory]
    [MemberData(nameof(Plans.Names), MemberType = typeof(Plans))]
    public async Task Page_and_card_open_without_a_complaint_and_fetch_nothing(string name)
    {
        await using OpenPage page = await chromium.OpenAsync(Plans.Page(name), Desk);
        await using OpenPage card = await chromium.OpenAsync(Plans.Card(name), Desk);

        Assert.Empty(page.Complaints);
        Assert.Empty(card.Complaints);
    }

    [Theory]
    [MemberData(nameof(Plans.Names), MemberType = typeof(Plans))]
    public async Task No_word_runs_out_of_the_window_or_of_a_picture(string name)
    {
        foreach (int width in (int[])[Phone, Desk])
        {
            await using OpenPage open = await chromium.OpenAsync(Plans.Page(name), width);
            Assert.Equal(width, await open.Page.EvaluateAsync<int>(Probes.Width));
            Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.OutsideTheirPlace));
            Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.CutInPictures));
        }
    }

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task Words_stand_out_from_their_ground_by_day_and_night(ColorScheme scheme)
    {
        foreach (string name in (string[])["plan-measured", "plan-falls-short"])
        {
            await using OpenPage open = await chromium.OpenAsync(Plans.Page(name), Desk, scheme);
            Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.FaintWords));
        }
    }

    [Fact]
    public async Task Buttons_step_through_the_passes()
    {
        await using OpenPage open = await chromium.OpenAsync(Plans.Page("plan-reached"), Desk);
        await open.Page.GetByRole(AriaRole.Button, new() { Name = "Next" }).ClickAsync();

        Assert.True(await open.Page.Locator("#step-1").IsVisibleAsync());
        Assert.False(await open.Page.Locator("#step-0").IsVisibleAsync());
    }

    [Theory]
    [MemberData(nameof(NamesAndPapers))]
    public async Task The_card_prints_on_exactly_one_sheet(string name, string paper)
    {
        byte[] pdf = await PrintedAsync(Plans.Card(name), paper);

        Assert.Contains("Pages:           1\n", Poppler.Info(pdf), StringComparison.Ordinal);
        string words = Poppler.Words(pdf);
        Assert.Contains("Wagtail <no. 3>", words, StringComparison.Ordinal);
        Assert.Contains("ask locally", words, StringComparison.Ordinal);
    }

    /// <remarks>The bar is the picture's own; where it stands is told by the browser.</remarks>
    [Theory]
    [InlineData("A4")]
    [InlineData("Letter")]
    public async Task The_printed_card_has_its_tang_to_scale(string paper)
    {
        await using OpenPage open = await chromium.OpenAsync(Plans.Card("plan-reached"), Desk);
        await open.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });
        double pixels = await open.Page.EvaluateAsync<double>(
            "document.querySelector('#tang').getBoundingClientRect().width"
        );

        // A CSS pixel is a 96th of an inch.
        Assert.Equal(190, pixels * 25.4 / 96, 0.02);
        Assert.Contains(
            "Pages:           1\n",
            Poppler.Info(await PrintedAsync(open.Page, paper)),
            StringComparison.Ordinal
        );
    }

    private async Task<byte[]> PrintedAsync(string html, string paper)
    {
        await using OpenPage open = await chromium.OpenAsync(html, Desk);
        return await PrintedAsync(open.Page, paper);
    }

    private static Task<byte[]> PrintedAsync(IPage page, string paper) =>
        page.PdfAsync(
            new PagePdfOptions
            {
                Format = paper,
                PrintBackground = true,
                PreferCSSPageSize = false,
            }
        );
}
