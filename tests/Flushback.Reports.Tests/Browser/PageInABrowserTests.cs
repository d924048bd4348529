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

        int width = await open.Page.EvaluateAsync<int>("document.documentElement.scrollWidth");
        string[] outside = await open.Page.EvaluateAsync<string[]>(OutsideTheirPlace);

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

        string[] faint = await open.Page.EvaluateAsync<string[]>(FaintWords);

        Assert.Empty(faint);
    }

    [Fact]
    public async Task A_long_name_without_a_space_stays_on_a_phone()
    {
        string html = HtmlReport.Write(new string('W', 300), SampleReports.InOrder(), []);
        await using OpenPage open = await chromium.OpenAsync(html, Phone);

        Assert.Equal(Phone, await open.Page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
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
        string[] cutOnADesk = await open.Page.EvaluateAsync<string[]>(CutInPictures);

        await open.Page.SetViewportSizeAsync(Phone, 900);
        string[] cutOnAPhone = await open.Page.EvaluateAsync<string[]>(CutInPictures);

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
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(OutsideTheirPlace));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(CutInPictures));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(OverlapsInCharts));
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

            Assert.Empty(await open.Page.EvaluateAsync<string[]>(OverlapsInCharts));
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

        Assert.Equal(width, await open.Page.EvaluateAsync<int>("document.documentElement.scrollWidth"));
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

    // Every element with words of its own must lie between the left and the right edge of the window.
    private const string OutsideTheirPlace = """
        [...document.querySelectorAll('body *')]
            .filter(e => !e.closest('svg') && !e.closest('thead') && [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()))
            .filter(e => { const r = e.getBoundingClientRect(); return r.left < 0 || r.right > innerWidth + 0.5; })
            .map(e => e.textContent.trim())
        """;

    private const string CutInPictures = """
        [...document.querySelectorAll('svg text')]
            .filter(t => t.getBoundingClientRect().width > 0)
            .filter(t => {
                const word = t.getBoundingClientRect(), sheet = t.closest('svg').getBoundingClientRect();
                return word.left < sheet.left || word.right > sheet.right || word.top < sheet.top || word.bottom > sheet.bottom;
            })
            .map(t => t.closest('svg').id + ': ' + t.textContent)
        """;

    // Half a pixel less all round: boxes of type that only touch do not overlap.
    private const string OverlapsInCharts = """
        [...document.querySelectorAll('.charts svg')].flatMap(sheet => {
            const words = [...sheet.querySelectorAll('text')].map(t => [t.textContent, t.getBoundingClientRect()]);
            return words.flatMap(([one, a], i) => words.slice(i + 1)
                .filter(([, b]) => a.left < b.right - 0.5 && b.left < a.right - 0.5 && a.top < b.bottom - 0.5 && b.top < a.bottom - 0.5)
                .map(([other]) => `${sheet.id}: ${one} / ${other}`));
        })
        """;

    // Contrast as in WCAG 2: (L1 + 0.05) / (L2 + 0.05) of relative luminances; 4.5 for running text.
    private const string FaintWords = """
        (() => {
            const channels = c => c.match(/[\d.]+/g).map(Number);
            const linear = v => (v /= 255) <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4;
            const luminance = ([r, g, b]) => 0.2126 * linear(r) + 0.7152 * linear(g) + 0.0722 * linear(b);
            const ground = e => {
                for (; e; e = e.parentElement) {
                    const c = channels(getComputedStyle(e).backgroundColor);
                    if (c.length < 4 || c[3] > 0) return c;
                }
                return [255, 255, 255];
            };
            return [...document.querySelectorAll('body *')]
                .filter(e => !e.closest('svg') && [...e.childNodes].some(n => n.nodeType === 3 && n.data.trim()))
                .filter(e => {
                    const a = luminance(channels(getComputedStyle(e).color)), b = luminance(ground(e));
                    return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05) < 4.5;
                })
                .map(e => e.className + ': ' + e.textContent.trim());
        })()
        """;
}
