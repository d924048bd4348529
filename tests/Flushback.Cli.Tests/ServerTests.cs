using System.Net;
using Flushback.Cli.Tests.Running;
using Flushback.Deployment.Tests.Running;
using Flushback.Service;
using Microsoft.AspNetCore.Builder;
using Microsoft.AspNetCore.Hosting;
using Microsoft.AspNetCore.Server.Kestrel.Core;
using Microsoft.Extensions.Logging;

namespace Flushback.Cli.Tests;

public sealed class ServerTests : IDisposable
{
    private readonly Workbench _bench = new();

    [Fact]
    public async Task A_running_service_gives_the_same_report_as_the_one_inside()
    {
        await using WebApplication host = FlushbackHost.Build([
            "--urls",
            "http://127.0.0.1:0",
            "--Logging:LogLevel:Default=None",
        ]);
        await host.StartAsync();
        string drawing = _bench.PutClean();

        Ending outside = await Client.RunAsync("check", drawing, "--json", "--server", host.Urls.Single());
        Ending inside = await Client.RunAsync("check", drawing, "--json");

        Assert.Equal(0, outside.ExitCode);
        Assert.Equal(inside.Output, outside.Output);
    }

    [Fact]
    public async Task No_server_exits_with_3_and_writes_nothing()
    {
        using KeptPort nobodys = new();

        Ending ending = await Client.RunAsync(
            "check",
            _bench.PutClean(),
            "--server",
            $"http://127.0.0.1:{nobodys.Number}",
            "--out",
            _bench.PathOf("report")
        );

        Assert.Equal(3, ending.ExitCode);
        Assert.Contains("cannot be reached", Assert.Single(ending.Complaints), StringComparison.Ordinal);
        Assert.Equal(["wagtail.dxf"], _bench.Contents);
    }

    [Fact]
    public async Task A_service_with_a_certificate_is_called_over_tls_and_only_when_it_is_trusted()
    {
        (string certificate, string key) = (_bench.PathOf("server.pem"), _bench.PathOf("server.key"));
        Certificate.Write(certificate, key);
        await using WebApplication host = FlushbackHost.Build([
            "--Logging:LogLevel:Default=None",
            "--Kestrel:Endpoints:Grpc:Url=https://127.0.0.1:0",
            $"--Kestrel:Endpoints:Grpc:Certificate:Path={certificate}",
            $"--Kestrel:Endpoints:Grpc:Certificate:KeyPath={key}",
        ]);
        await host.StartAsync();
        string[] args = ["check", _bench.PutClean(), "--quiet", "--server", host.Urls.Single()];

        Ending trusted = await Client.RunWithAsync(new() { ["SSL_CERT_FILE"] = certificate }, args);
        Ending stranger = await Client.RunAsync(args);

        Assert.Equal((0, ""), (trusted.ExitCode, trusted.Error));
        Assert.Equal(3, stranger.ExitCode);
        Assert.Contains("does not trust", Assert.Single(stranger.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_server_that_is_no_flushback_service_exits_with_3()
    {
        WebApplicationBuilder builder = WebApplication.CreateSlimBuilder();
        builder.WebHost.ConfigureKestrel(kestrel =>
            kestrel.Listen(IPAddress.Loopback, 0, endpoint => endpoint.Protocols = HttpProtocols.Http2)
        );
        builder.Logging.ClearProviders();
        await using WebApplication other = builder.Build();
        await other.StartAsync();

        Ending ending = await Client.RunAsync("check", _bench.PutClean(), "--server", other.Urls.Single());

        Assert.Equal(3, ending.ExitCode);
        Assert.Contains("not a Flushback service", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    public void Dispose() => _bench.Dispose();
}
