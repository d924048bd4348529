using System.Net;
using Flushback.Reports.Tests.Browser;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Google.Protobuf;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Http;
using Microsoft.Extensions.Logging;
using Microsoft.Playwright;

namespace Flushback.Service.Tests.Web;

/// <summary>A page of another origin, in a real browser, that calls by gRPC-Web with nothing but fetch.</summary>
public sealed class BrowserTests(Chromium chromium) : IClassFixture<Chromium>, IAsyncLifetime
{
    private const string NoWords = "";

    // What gRPC-Web sends is what gRPC sends: a byte of flags, the length, the message; a flag of 128 marks the trailers.
    private const string Call = """
        async ([url, message]) => {
          const bytes = Uint8Array.from(atob(message), c => c.charCodeAt(0));
          const body = new Uint8Array(5 + bytes.length);
          new DataView(body.buffer).setUint32(1, bytes.length);
          body.set(bytes, 5);
          const headers = {'content-type': 'application/grpc-web+proto', 'x-grpc-web': '1'};
          let response;
          try {
            response = await fetch(url, {method: 'POST', headers, body});
          } catch (fault) {
            return ['blocked', '', ''];
          }
          const answer = new Uint8Array(await response.arrayBuffer());
          const view = new DataView(answer.buffer);
          let report = '', trailers = '';
          for (let at = 0; at < answer.length; ) {
            const part = answer.slice(at + 5, at + 5 + view.getUint32(at + 1));
            if (answer[at] & 128) trailers = new TextDecoder().decode(part);
            else report = btoa(Array.from(part, b => String.fromCharCode(b)).join(''));
            at += 5 + part.length;
          }
          return [response.headers.get('grpc-status') ?? '', report, trailers];
        }
        """;

    private WebApplication _pages = null!;
    private RunningService _service = null!;

    public async Task InitializeAsync()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.ConfigureKestrel(kestrel => kestrel.Listen(IPAddress.Loopback, 0));
        builder.Logging.ClearProviders();
        _pages = builder.Build();
        _pages.MapGet("/", () => Results.Content("<!DOCTYPE html><title>Bench</title>", "text/html"));
        await _pages.StartAsync();
        _service = await RunningService.StartAsync(
            "--Web:Url=http://127.0.0.1:0",
            $"--Web:Origins:0={_pages.Urls.Single()}"
        );
    }

    public async Task DisposeAsync()
    {
        await _service.DisposeAsync();
        await _pages.DisposeAsync();
    }

    [Fact]
    public async Task A_page_in_a_browser_gets_the_same_report_as_any_client()
    {
        Wire.CheckRequest request = Requests.Outlines(Wire.ArtifactKind.Json);

        (_, string report, string trailers) = await CallAsync(_service, request);

        Assert.Equal((await _service.Checker.CheckAsync(request)).ToByteArray(), Convert.FromBase64String(report));
        Assert.Contains("grpc-status: 0", trailers, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public async Task A_page_in_a_browser_can_read_why_it_is_refused()
    {
        (string status, string report, string trailers) = await CallAsync(_service, new Wire.CheckRequest());

        Assert.Equal(NoWords, report);
        Assert.True(status == "3" || trailers.Contains("grpc-status: 3", StringComparison.OrdinalIgnoreCase));
    }

    [Fact]
    public async Task A_browser_keeps_the_answer_from_a_page_whose_origin_may_not_call()
    {
        RunningService closed = await RunningService.StartAsync("--Web:Url=http://127.0.0.1:0");

        (string status, string report, _) = await CallAsync(closed, Requests.Outlines());

        Assert.Equal(("blocked", NoWords), (status, report));
        await closed.DisposeAsync();
    }

    private async Task<(string Status, string Report, string Trailers)> CallAsync(
        RunningService service,
        Wire.CheckRequest request
    )
    {
        IPage page = await chromium.OpenAsync(new Uri(_pages.Urls.Single()));
        Uri check = new(service.OtherAddress, "/flushback.v1.ProfileChecker/Check");
        string[] told = await page.EvaluateAsync<string[]>(
            Call,
            new[] { check.ToString(), Convert.ToBase64String(request.ToByteArray()) }
        );
        await page.CloseAsync();
        return (told[0], told[1], told[2]);
    }
}
