using Flushback.Service.Hosting;
using Flushback.Service.Tests.Hosting;

namespace Flushback.Service.Tests.Security;

/// <summary>Where the service listens and where it refuses to.</summary>
public sealed class AddressTests : IDisposable
{
    private readonly Certificates _certificates = new();

    [Theory]
    [InlineData("http://0.0.0.0:0", "TLS")]
    [InlineData("http://*:0", "TLS")]
    [InlineData("http://[::]:0", "TLS")]
    [InlineData("http://192.0.2.7:0", "TLS")]
    [InlineData("http://127.0.0.1:0;http://0.0.0.0:0", "TLS")]
    [InlineData("https://0.0.0.0:0", "a token")]
    public async Task An_address_that_others_reach_is_refused_without_tls_and_a_token(string urls, string missing)
    {
        (string certificate, string key) = _certificates.WriteServer();

        RefusedStartException refused = await Assert.ThrowsAsync<RefusedStartException>(() =>
            RunningService.StartAsync(
                "--urls",
                urls,
                $"--Security:CertificateFile={certificate}",
                $"--Security:KeyFile={key}"
            )
        );

        Assert.Contains($"without {missing};", refused.Message, StringComparison.Ordinal);
        Assert.EndsWith("or say --insecure.", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_endpoint_of_the_configuration_is_held_to_the_same()
    {
        RefusedStartException refused = await Assert.ThrowsAsync<RefusedStartException>(() =>
            RunningService.StartAsync("--Kestrel:Endpoints:Own:Url=http://0.0.0.0:0")
        );

        Assert.Contains("http://0.0.0.0:0", refused.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--Telemetry:MetricsUrl=http://0.0.0.0:0")]
    [InlineData("--Web:Url=http://0.0.0.0:0")]
    public async Task So_are_the_addresses_for_metrics_and_for_pages(string setting) =>
        await Assert.ThrowsAsync<RefusedStartException>(() => RunningService.StartAsync(setting));

    [Fact]
    public async Task With_tls_and_a_token_the_service_listens_for_others()
    {
        (string certificate, string key) = _certificates.WriteServer();
        await File.WriteAllTextAsync(_certificates.PathOf("tokens"), new string('t', 32));

        RunningService service = await RunningService.StartAsync(
            "--urls",
            "https://0.0.0.0:0",
            $"--Security:CertificateFile={certificate}",
            $"--Security:KeyFile={key}",
            $"--Security:TokenFile={_certificates.PathOf("tokens")}"
        );

        Assert.Equal("https", service.Address.Scheme);
        await service.DisposeAsync();
    }

    [Fact]
    public async Task Told_insecure_it_listens_wherever_it_is_told()
    {
        RunningService service = await RunningService.StartAsync("--insecure", "--urls", "http://0.0.0.0:0");

        Assert.Equal("http", service.Address.Scheme);
        await service.DisposeAsync();
    }

    [Theory]
    [InlineData("--urls", "127.0.0.1")]
    [InlineData("--Security:TokenFile=/nowhere/tokens", "")]
    [InlineData("--Security:ClientAuthorityFile=/nowhere/authority.pem", "")]
    public async Task What_cannot_be_used_keeps_the_service_from_starting(params string[] args)
    {
        RefusedStartException refused = await Assert.ThrowsAsync<RefusedStartException>(() =>
            RunningService.StartAsync([.. args.Where(arg => arg.Length > 0)])
        );

        Assert.DoesNotContain("   at ", refused.Message, StringComparison.Ordinal);
    }

    public void Dispose() => _certificates.Dispose();
}
