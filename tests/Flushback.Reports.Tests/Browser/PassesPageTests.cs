using Flushback.Reports.Tests.Fixtures;
using Microsoft.Playwright;

namespace Flushback.Reports.Tests.Browser;

public sealed class PassesPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const int Phone = 380;
    private const int Desk = 1280;
    private const int Steps = 9;

    private const string Shown =
        "[...document.querySelectorAll('.step')].filter(s => s.offsetHeight > 0).map(s => s.id)";

    [Theory]
    [MemberData(nameof(Simulations.Names), MemberType = typeof(Simulations))]
    public async Task The_page_opens_without_a_complaint_and_fetches_nothing(string name)
    {
        await using OpenPage open = await chromium.OpenAsync(Simulations.Page(name), Desk);

        Assert.Empty(open.Complaints);
    }

    [Fact]
    public async Task Buttons_step_through_the_passes_and_stop_at_both_ends()
    {
        await using OpenPage open = await OpenAsync(Desk);
        ILocator on = open.Page.GetByRole(AriaRole.Button, new() { Name = "Next" });
        ILocator back = open.Page.GetByRole(AriaRole.Button, new() { Name = "Back" });

        Assert.Equal(["step-0"], await ShownAsync(open));
        Assert.True(await back.IsDisabledAsync());
        await on.ClickAsync();
        await on.ClickAsync();
        Assert.Equal(["step-2"], await ShownAsync(open));
        Assert.Equal("Pass 2 of 8", await open.Page.Locator("#told").TextContentAsync());
        Assert.Equal("2", await open.Page.Locator("tr.current").GetAttributeAsync("data-step"));
        await back.ClickAsync();
        Assert.Equal(["step-1"], await ShownAsync(open));
        for (int i = 1; i < Steps - 1; i++)
        {
            await on.ClickAsync();
        }

        Assert.True(await on.IsDisabledAsync());
        Assert.Equal(["step-8"], await ShownAsync(open));
        Assert.Empty(open.Complaints);
    }

    [Fact]
    public async Task Keys_step_through_the_passes()
    {
        await using OpenPage open = await OpenAsync(Desk);

        await open.Page.Keyboard.PressAsync("ArrowRight");
        Assert.Equal(["step-1"], await ShownAsync(open));
        await open.Page.Keyboard.PressAsync("End");
        Assert.Equal(["step-8"], await ShownAsync(open));
        await open.Page.Keyboard.PressAsync("ArrowRight");
        await open.Page.Keyboard.PressAsync("ArrowLeft");
        Assert.Equal(["step-7"], await ShownAsync(open));
        await open.Page.Keyboard.PressAsync("Home");
        Assert.Equal(["step-0"], await ShownAsync(open));
    }

    [Fact]
    public async Task Without_scripts_all_passes_stand_one_under_another()
    {
        await using OpenPage open = await chromium.OpenAsync(Simulations.Page("passes-many"), Desk, scripts: false);

        for (int i = 0; i < Steps; i++)
        {
            Assert.True(await open.Page.Locator($"#step-{i}").IsVisibleAsync());
        }

        Assert.False(await open.Page.Locator("#stepper").IsVisibleAsync());
    }

    [Fact]
    public async Task On_paper_all_passes_are_printed()
    {
        await using OpenPage open = await OpenAsync(Desk);
        await open.Page.EmulateMediaAsync(new PageEmulateMediaOptions { Media = Media.Print });

        Assert.Equal(Steps, (await ShownAsync(open)).Length);
        Assert.False(await open.Page.Locator("#stepper").IsVisibleAsync());
    }

    [Theory]
    [InlineData("passes-many", Phone)]
    [InlineData("passes-no-half-stop", Phone)]
    [InlineData("passes-many", Desk)]
    [InlineData("passes-no-half-stop", Desk)]
    public async Task No_word_runs_out_of_the_window_or_of_a_picture(string name, int width)
    {
        await using OpenPage open = await chromium.OpenAsync(Simulations.Page(name), width);
        do
        {
            Assert.Equal(width, await open.Page.EvaluateAsync<int>(Probes.Width));
            Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.OutsideTheirPlace));
            Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.CutInPictures));
            await open.Page.Keyboard.PressAsync("ArrowRight");
        } while (!await open.Page.Locator("#on").IsDisabledAsync());
    }

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task Words_stand_out_from_their_ground_by_day_and_night(ColorScheme scheme)
    {
        await using OpenPage open = await chromium.OpenAsync(Simulations.Page("passes-many"), Desk, scheme);

        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.FaintWords));
    }

    [Theory]
    [InlineData("passes-many", 40)]
    public async Task What_comes_off_can_be_seen_close_up(string name, int leastPixels)
    {
        await using OpenPage open = await chromium.OpenAsync(Simulations.Page(name), Desk);
        for (int pass = 1; pass < Steps; pass++)
        {
            await open.Page.Keyboard.PressAsync("ArrowRight");
            LocatorBoundingBoxResult? box = await open
                .Page.Locator($"svg#pass-{pass}-close .fb-removed")
                .First.BoundingBoxAsync();
            Assert.NotNull(box);
            Assert.InRange(Math.Max(box.Width, box.Height), leastPixels, Desk);
        }
    }

    private Task<OpenPage> OpenAsync(int width) => chromium.OpenAsync(Simulations.Page("passes-many"), width);

    private static Task<string[]> ShownAsync(OpenPage open) => open.Page.EvaluateAsync<string[]>(Shown);
}
