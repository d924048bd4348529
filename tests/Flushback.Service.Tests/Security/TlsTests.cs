using System.Security.Cryptography.X509Certificates;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Inputs;
using Grpc.Core;
using Grpc.Net.Client;

namespace Flushback.Service.Tests.Security;

public sealed class TlsTests : IDisposable
{
    private readonly Certificates _ours = new();
    private readonly Certificates _strangers = new();

    [Fact]
    public async Task A_certificate_by_file_serves_calls_over_tls()
    {
        RunningService service = await StartAsync();

        Assert.Equal(StatusCode.OK, await CallAsync(service, _ours.Handler()));
        // A client that does not trust the certificate calls it off by itself.
        Assert.Equal(StatusCode.Internal, await CallAsync(service, _strangers.Handler()));
        await service.DisposeAsync();
    }

    [Fact]
    public async Task Where_callers_need_a_certificate_only_one_of_our_authority_gets_in()
    {
        RunningService service = await StartAsync($"--Security:ClientAuthorityFile={_ours.AuthorityFile}");
        using X509Certificate2 ours = _ours.Client();
        using X509Certificate2 strangers = _strangers.Client();

        Assert.Equal(StatusCode.OK, await CallAsync(service, _ours.Handler(ours)));
        // TLS 1.3 tells a client late that he is not let in; when he notices decides what he calls it.
        Assert.NotEqual(StatusCode.OK, await CallAsync(service, _ours.Handler(strangers)));
        Assert.NotEqual(StatusCode.OK, await CallAsync(service, _ours.Handler()));
        await service.DisposeAsync();
    }

    [Fact]
    public async Task A_call_without_tls_to_an_address_with_it_is_not_answered()
    {
        RunningService service = await StartAsync();
        using GrpcChannel channel = GrpcChannel.ForAddress($"http://127.0.0.1:{service.Address.Port}");

        RpcException failed = await Assert.ThrowsAsync<RpcException>(async () =>
            await new Wire.ProfileChecker.ProfileCheckerClient(channel).CheckAsync(Requests.Outlines())
        );

        Assert.Contains(failed.StatusCode, (StatusCode[])[StatusCode.Unavailable, StatusCode.Internal]);
        await service.DisposeAsync();
    }

    public void Dispose()
    {
        _ours.Dispose();
        _strangers.Dispose();
    }

    private async Task<RunningService> StartAsync(params string[] more)
    {
        (string certificate, string key) = _ours.WriteServer();
        return await RunningService.StartAsync([
            "--urls",
            "https://127.0.0.1:0",
            $"--Security:CertificateFile={certificate}",
            $"--Security:KeyFile={key}",
            .. more,
        ]);
    }

    private static async Task<StatusCode> CallAsync(RunningService service, SocketsHttpHandler handler)
    {
        using GrpcChannel channel = GrpcChannel.ForAddress(
            service.Address,
            new GrpcChannelOptions { HttpHandler = handler, DisposeHttpClient = true }
        );
        try
        {
            await new Wire.ProfileChecker.ProfileCheckerClient(channel).CheckAsync(Requests.Outlines());
            return StatusCode.OK;
        }
        catch (RpcException failed)
        {
            return failed.StatusCode;
        }
    }
}
