using System.Net;
using System.Net.Sockets;
using Flushback.Cli.Tests.Running;
using Flushback.Service;
using Microsoft.AspNetCore.Builder;

namespace Flushback.Cli.Tests;

public sealed class ServerTest : IDisposable
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
        string nobody = $"http://127.0.0.1:{FreePort()}";

        Ending ending = await Client.RunAsync(
            "check",
            _bench.PutClean(),
            "--server",
            nobody,
            "--out",
            _bench.PathOf("report")
        );

        Assert.Equal(3, ending.ExitCode);
        Assert.Contains("cannot be reached", Assert.Single(ending.Complaints), StringComparison.Ordinal);
        Assert.Equal(["wagtail.dxf"], _bench.Contents);
    }

    public void Dispose() => _bench.Dispose();

    private static int FreePort()
    {
        using TcpListener listener = new(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
