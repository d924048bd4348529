using Flushback.Reports.Tests.Browser;
using Microsoft.Playwright;

namespace Flushback.Cli.Tests.Regression;

/// <summary>The page of a library in a browser.</summary>
public sealed class IndexPageTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private const int Phone = 380;
    private const int Desk = 1280;

    private readonly LibraryOnDisk _library = LibraryOnDisk.OfFour();
    private string _page = "";

    public async Task InitializeAsync()
    {
        await _library.UpdateAsync();
        _library.Put("wagtail.dxf", LibraryOnDisk.WagtailWithALongerHandle(0.05));
        _library.Put("curlew.dxf", "<script>alert('no drawing')</script>");
        _library.Put("<b>added.dxf", LibraryOnDisk.WagtailWithALongerHandle(0));
        File.Delete(_library.PathOf("round/dunlin.dxf"));
        await _library.RegressAsync("--out", _library.Beside("out"));
        _page = await File.ReadAllTextAsync(Path.Combine(_library.Beside("out"), "index.html"));
    }

    [Theory]
    [InlineData(Phone, ColorScheme.Light)]
    [InlineData(Desk, ColorScheme.Light)]
    [InlineData(Desk, ColorScheme.Dark)]
    public async Task It_opens_without_a_complaint_fetches_nothing_and_can_be_read(int width, ColorScheme scheme)
    {
        await using OpenPage open = await chromium.OpenAsync(_page, width, scheme);

        Assert.Empty(open.Complaints);
        Assert.Equal(width, await open.Page.EvaluateAsync<int>(Probes.Width));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.OutsideTheirPlace));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.FaintWords));
    }

    [Fact]
    public async Task What_is_not_as_before_stands_first_and_every_item_has_its_row_and_picture()
    {
        await using OpenPage open = await chromium.OpenAsync(_page, Desk);

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
        await using OpenPage open = await chromium.OpenAsync(_page, Desk);
        ILocator changed = open.Page.Locator("section.changed");

        Assert.Equal(1, await changed.Locator(".whole .was").CountAsync());
        Assert.Equal(1, await changed.Locator(".near").CountAsync());

        // 0.05 mm in a picture 1.5 mm wide: the two lines stand this many pixels apart, at least.
        double apart = await changed
            .Locator(".near svg")
            .EvaluateAsync<double>("svg => 0.05 / svg.viewBox.baseVal.width * svg.getBoundingClientRect().width");
        Assert.InRange(apart, 8, 100);
    }

    public Task DisposeAsync()
    {
        _library.Dispose();
        return Task.CompletedTask;
    }
}
