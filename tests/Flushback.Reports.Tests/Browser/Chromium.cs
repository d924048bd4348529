using Microsoft.Playwright;

namespace Flushback.Reports.Tests.Browser;

/// <summary>The machine's own Chromium, headless; started once for a class of tests.</summary>
/// <remarks>Install it with <c>apt-get install chromium</c>; another place is told by <c>FLUSHBACK_CHROMIUM</c>.</remarks>
public sealed class Chromium : IAsyncLifetime
{
    // Instead of the half minute of the library, which a busy machine may take: only what hangs comes to the end of it.
    private const float LongestMs = 300_000;

    private IPlaywright? _playwright;
    private IBrowser? _browser;

    public async Task InitializeAsync()
    {
        string path = Environment.GetEnvironmentVariable("FLUSHBACK_CHROMIUM") ?? "/usr/bin/chromium";
        Assert.True(File.Exists(path), $"No Chromium at {path}: install it, or say where it is in FLUSHBACK_CHROMIUM.");
        _playwright = await Playwright.CreateAsync();
        _browser = await _playwright.Chromium.LaunchAsync(
            new BrowserTypeLaunchOptions
            {
                ExecutablePath = path,
                Timeout = LongestMs,
                Args =
                [
                    "--no-sandbox",
                    "--disable-gpu",
                    "--disable-quic",
                    "--no-first-run",
                    "--disable-background-networking",
                    "--disable-component-update",
                    "--disable-sync",
                ],
            }
        );
    }

    /// <summary>Opens a page from its text, without a network; whatever it tries to fetch, and every complaint, is noted.</summary>
    public async Task<OpenPage> OpenAsync(
        string html,
        int width,
        ColorScheme scheme = ColorScheme.Light,
        bool scripts = true
    )
    {
        IPage page = await _browser!.NewPageAsync(
            new BrowserNewPageOptions
            {
                ViewportSize = new ViewportSize { Width = width, Height = 900 },
                ColorScheme = scheme,
                Offline = true,
                JavaScriptEnabled = scripts,
            }
        );
        page.SetDefaultTimeout(LongestMs);
        var complaints = new List<string>();
        page.Console += (_, message) => complaints.Add($"console {message.Type}: {message.Text}");
        page.PageError += (_, error) => complaints.Add($"page error: {error}");
        page.Request += (_, request) => complaints.Add($"request: {request.Url}");
        await page.SetContentAsync(html);
        return new OpenPage(page, complaints);
    }

    /// <summary>Opens the page that a server on this machine serves.</summary>
    public async Task<IPage> OpenAsync(Uri address)
    {
        IPage page = await _browser!.NewPageAsync();
        page.SetDefaultTimeout(LongestMs);
        await page.GotoAsync(address.ToString());
        return page;
    }

    public async Task DisposeAsync()
    {
        if (_browser is not null)
        {
            await _browser.DisposeAsync();
        }

        _playwright?.Dispose();
    }
}

/// <summary>A page that is open, and what was noted while it opened.</summary>
public sealed record OpenPage(IPage Page, IReadOnlyList<string> Complaints) : IAsyncDisposable
{
    public async ValueTask DisposeAsync() => await Page.CloseAsync();
}
