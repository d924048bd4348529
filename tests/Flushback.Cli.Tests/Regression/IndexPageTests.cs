using Flushback.Reports.Tests.Browser;
using Microsoft.Playwright;

namespace Flushback.Cli.Tests.Regression;

/// <summary>The page of a library in a browser.</summary>
public sealed class IndexPageTests(Chromium chromium, IndexPageTests.WrittenPage written)
    : IClassFixture<Chromium>,
        IClassFixture<IndexPageTests.WrittenPage>
{
    private const int Phone = 380;
    private const int Desk = 1280;

    [Theory]
    [InlineData(Phone, ColorScheme.Light)]
    [InlineData(Desk, ColorScheme.Light)]
    [InlineData(Desk, ColorScheme.Dark)]
    public async Task It_opens_without_a_complaint_fetches_nothing_and_can_be_read(int width, ColorScheme scheme)
    {
        await using OpenPage open = await chromium.OpenAsync(written.Html, width, scheme);

        Assert.Empty(open.Complaints);
        Assert.Equal(width, await open.Page.EvaluateAsync<int>(Probes.Width));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.OutsideTheirPlace));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.FaintWords));
    }

    [Fact]
    public async Task What_is_not_as_before_stands_first_and_every_item_has_its_row_and_picture()
    {
        await using OpenPage open = await chromium.OpenAsync(written.Html, Desk);

        Assert.Equal(
            ["new <b>added.dxf", "error curlew.dxf", "gone round/dunlin.dxf", "changed wagtail.dxf"],
            await open.Page.Locator("section h2").AllTextContentsAsync()
        );
        Assert.Equal(
            ["<b>added.dxf", "curlew.dxf", "round/dunlin.dxf", "wader.yaml", "wagtail.dxf"],
            await open.Page.Locator("tbody th").AllTextContentsAsync()
        );
        Assert.Equal(5, await open.Page.Locator("tbody tr svg").CountAsync());
        Assert.Equal("+5.0", await open.Page.Locator("tbody tr:last-child .number").First.TextContentAsync());
    }

    [Fact]
    public async Task A_changed_outline_is_drawn_over_the_one_before_and_close_up_where_it_is_off_most()
    {
        await using OpenPage open = await chromium.OpenAsync(written.Html, Desk);
        ILocator changed = open.Page.Locator("section.changed");

        Assert.Equal(1, await changed.Locator(".whole .was").CountAsync());
        Assert.Equal(1, await changed.Locator(".near").CountAsync());

        // 0.05 mm in a picture 1.5 mm wide: the two lines stand this many pixels apart, at least.
        double apart = await changed
            .Locator(".near svg")
            .EvaluateAsync<double>("svg => 0.05 / svg.viewBox.baseVal.width * svg.getBoundingClientRect().width");
        Assert.InRange(apart, 8, 100);
    }

    /// <summary>The page of a library in which something of each kind has happened, written once for all tests.</summary>
    public sealed class WrittenPage : IAsyncLifetime
    {
        /// <summary>Its text.</summary>
        public string Html { get; private set; } = "";

        public async Task InitializeAsync()
        {
            using LibraryOnDisk library = LibraryOnDisk.OfFour();
            await library.UpdateAsync();
            library.Put("wagtail.dxf", LibraryOnDisk.WagtailWithALongerHandle(0.05));
            library.Put("curlew.dxf", "<script>alert('no drawing')</script>");
            library.Put("<b>added.dxf", LibraryOnDisk.WagtailWithALongerHandle(0));
            File.Delete(library.PathOf("round/dunlin.dxf"));
            await library.RegressAsync("--out", library.Beside("out"));
            Html = await File.ReadAllTextAsync(Path.Combine(library.Beside("out"), "index.html"));
        }

        public Task DisposeAsync() => Task.CompletedTask;
    }
}
