using Flushback.Cli.Tests.Running;
using Flushback.Service;
using Flushback.Service.Tests.Security;
using Microsoft.AspNetCore.Builder;

namespace Flushback.Cli.Tests;

/// <summary>A service elsewhere: what it asks of its callers, and how long they wait.</summary>
public sealed class RemoteTests : IDisposable
{
    private const string Token = "0123456789abcdef0123456789abcdef";
    private readonly Workbench _bench = new();
    private readonly Certificates _ours = new();
    private readonly Certificates _strangers = new();

    [Fact]
    public async Task With_authority_certificate_and_token_from_files_it_is_let_in()
    {
        await using WebApplication host = await StartAsync();
        (string certificate, string key) = _ours.WriteClient();

        Ending ending = await Client.RunAsync([
            .. CheckAt(host),
            "--authority-file",
            _ours.AuthorityFile,
            "--certificate-file",
            certificate,
            "--key-file",
            key,
            "--token-file",
            TokenFile(Token),
        ]);

        Assert.Equal((0, ""), (ending.ExitCode, ending.Error));
        Assert.Equal("wagtail", Wire.CheckReport.Parser.ParseJson(ending.Output).Name);
    }

    [Fact]
    public async Task A_certificate_and_its_key_may_be_in_one_file()
    {
        await using WebApplication host = await StartAsync();
        (string certificate, string key) = _ours.WriteClient();
        await File.AppendAllTextAsync(certificate, "\n" + await File.ReadAllTextAsync(key));

        Ending ending = await Client.RunAsync([
            .. CheckAt(host),
            "--authority-file",
            _ours.AuthorityFile,
            "--certificate-file",
            certificate,
            "--token-file",
            TokenFile(Token),
        ]);

        Assert.Equal((0, ""), (ending.ExitCode, ending.Error));
    }

    [Theory]
    [InlineData("fedcba9876543210fedcba9876543210")]
    [InlineData(null)]
    public async Task Without_the_right_token_it_says_which_option_names_it(string? token)
    {
        await using WebApplication host = await StartAsync(asksForCertificate: false);
        string[] shown = token is null ? [] : ["--token-file", TokenFile(token)];

        Ending ending = await Client.RunAsync([.. CheckAt(host), "--authority-file", _ours.AuthorityFile, .. shown]);

        Assert.Equal((3, ""), (ending.ExitCode, ending.Output));
        Assert.EndsWith("with --token-file.", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_certificate_of_another_authority_is_not_trusted()
    {
        await using WebApplication host = await StartAsync(asksForCertificate: false);

        Ending ending = await Client.RunAsync([.. CheckAt(host), "--authority-file", _strangers.AuthorityFile]);

        Assert.Equal((3, ""), (ending.ExitCode, ending.Output));
        Assert.Contains("--authority-file", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_a_certificate_is_asked_for_none_is_let_in_without_it()
    {
        await using WebApplication host = await StartAsync();

        Ending ending = await Client.RunAsync([.. CheckAt(host), "--authority-file", _ours.AuthorityFile]);

        Assert.Equal((3, ""), (ending.ExitCode, ending.Output));
        Assert.Contains("--certificate-file", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_deadline_that_passes_is_told()
    {
        Ending ending = await Client.RunAsync("check", _bench.PutClean(), "--deadline", "1ms");

        Assert.Equal((3, ""), (ending.ExitCode, ending.Output));
        Assert.Contains("--deadline", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("a token", "holds no token")]
    [InlineData("\n", "holds no token")]
    [InlineData(null, "There is no file")]
    public async Task A_file_that_holds_no_token_is_told_and_nobody_is_called(string? content, string complaint)
    {
        string file = content is null ? _bench.PathOf("nowhere") : TokenFile(content);

        Ending ending = await Client.RunAsync(
            "check",
            _bench.PutClean(),
            "--server",
            "https://127.0.0.1:9",
            "--token-file",
            file
        );

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains(complaint, Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--authority-file")]
    [InlineData("--certificate-file")]
    public async Task A_file_that_holds_no_certificate_is_told(string option)
    {
        Ending ending = await Client.RunAsync(
            "check",
            _bench.PutClean(),
            "--server",
            "https://127.0.0.1:9",
            option,
            TokenFile("no certificate")
        );

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains("tokens", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_token_is_not_sent_in_the_clear_beyond_this_machine()
    {
        // An address of TEST-NET-1 (RFC 5737), where nobody lives.
        Ending ending = await Client.RunAsync(
            "check",
            _bench.PutClean(),
            "--server",
            "http://192.0.2.1:5210",
            "--token-file",
            TokenFile(Token)
        );

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains("in the clear", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("--key-file", "--certificate-file")]
    [InlineData("--authority-file", "https://")]
    public async Task A_file_that_would_have_no_use_is_told(string option, string wanted)
    {
        string server = option == "--key-file" ? "https://127.0.0.1:9" : "http://127.0.0.1:9";

        Ending ending = await Client.RunAsync("check", _bench.PutClean(), "--server", server, option, TokenFile(Token));

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains(wanted, Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_for_a_service_elsewhere_is_refused_without_one()
    {
        Ending ending = await Client.RunAsync("inspect", _bench.PutClean(), "--token-file", TokenFile(Token));

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains("--server", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("3")]
    [InlineData("0s")]
    [InlineData("-1s")]
    [InlineData("25000min")]
    [InlineData("1e400s")]
    [InlineData("s")]
    public async Task A_time_that_is_none_is_refused(string time)
    {
        Ending ending = await Client.RunAsync("check", _bench.PutClean(), $"--deadline={time}");

        Assert.Equal(2, ending.ExitCode);
        Assert.StartsWith("--deadline: ", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    public void Dispose()
    {
        _bench.Dispose();
        _ours.Dispose();
        _strangers.Dispose();
    }

    private string[] CheckAt(WebApplication host) =>
        ["check", _bench.PutClean(), "--json", "--server", host.Urls.Single()];

    private string TokenFile(string content) => _bench.Put("tokens", System.Text.Encoding.UTF8.GetBytes(content));

    private async Task<WebApplication> StartAsync(bool asksForCertificate = true)
    {
        (string certificate, string key) = _ours.WriteServer();
        string tokens = Path.Combine(_bench.PathOf(""), "service-tokens");
        await File.WriteAllTextAsync(tokens, Token);
        WebApplication host = FlushbackHost.Build([
            "--Logging:LogLevel:Default=None",
            "--urls",
            "https://127.0.0.1:0",
            $"--Security:CertificateFile={certificate}",
            $"--Security:KeyFile={key}",
            $"--Security:TokenFile={tokens}",
            .. asksForCertificate ? (string[])[$"--Security:ClientAuthorityFile={_ours.AuthorityFile}"] : [],
        ]);
        await host.StartAsync();
        return host;
    }
}
