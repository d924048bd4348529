using System.Net.Sockets;
using Flushback.Cli.Servers;
using Flushback.Service.Tests.Hosting;
using Flushback.Service.Tests.Security;
using Grpc.Net.Client;

namespace Flushback.Deployment.Tests.Running;

/// <summary>The nginx of docker/nginx.conf on this machine: the same file but for its addresses and paths.</summary>
internal sealed class Nginx : IAsyncDisposable
{
    private readonly KeptPort _port = new();
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("flushback-nginx-");
    private readonly Certificates _certificates = new();
    private readonly StartedProgram _program;

    private Nginx(IReadOnlyList<Uri> replicas, IReadOnlyDictionary<string, string> changes)
    {
        Address = new Uri($"https://127.0.0.1:{_port.Number}");
        string file = Path.Combine(_folder.FullName, "nginx.conf");
        File.WriteAllText(file, Rewritten(replicas, changes));
        _program = StartedProgram.Start("/usr/sbin/nginx", ["-p", _folder.FullName, "-c", file, "-g", "daemon off;"]);
    }

    /// <summary>Where callers reach it.</summary>
    public Uri Address { get; }

    /// <summary>File with the certificate of who vouches for it.</summary>
    public string AuthorityFile => _certificates.AuthorityFile;

    /// <summary>A handler that trusts its certificate.</summary>
    public SocketsHttpHandler Handler() => _certificates.Handler();

    /// <summary>A channel to it, by the settings of the client.</summary>
    public GrpcChannel Open() => GrpcChannel.ForAddress(Address, ChannelSettings.With(Handler()));

    /// <summary>Starts it in front of two replicas.</summary>
    /// <param name="replicas">Their addresses.</param>
    /// <param name="changes">Settings to have otherwise, each by the text that stands there now.</param>
    public static async Task<Nginx> StartAsync(
        IReadOnlyList<Uri> replicas,
        IReadOnlyDictionary<string, string>? changes = null
    )
    {
        Nginx nginx = new(replicas, changes ?? new Dictionary<string, string>());
        await Eventually.IsTrueAsync(async () =>
        {
            Assert.False(nginx._program.HasEnded, nginx._program.Printed);
            return await nginx.ListensAsync();
        });
        return nginx;
    }

    /// <inheritdoc/>
    public async ValueTask DisposeAsync()
    {
        await _program.DisposeAsync();
        _port.Dispose();
        _certificates.Dispose();
        _folder.Delete(recursive: true);
    }

    private string Rewritten(IReadOnlyList<Uri> replicas, IReadOnlyDictionary<string, string> changes)
    {
        (string certificate, string key) = _certificates.WriteServer();
        Dictionary<string, string> all = new(changes)
        {
            ["replica-1:5210"] = replicas[0].Authority,
            ["replica-2:5210"] = replicas[1].Authority,
            ["listen 8443 ssl"] = $"listen 127.0.0.1:{_port.Number} ssl",
            ["/run/secrets/server.pem"] = certificate,
            ["/run/secrets/server.key"] = key,
        };

        // First, because the certificates lie under /tmp/ too.
        string text = File.ReadAllText(Repository.PathOf("docker/nginx.conf"))
            .Replace("/tmp/", _folder.FullName + "/", StringComparison.Ordinal);
        foreach ((string before, string after) in all)
        {
            Assert.Contains(before, text, StringComparison.Ordinal);
            text = text.Replace(before, after, StringComparison.Ordinal);
        }

        return text;
    }

    private async Task<bool> ListensAsync()
    {
        using TcpClient client = new();
        try
        {
            await client.ConnectAsync(Address.Host, Address.Port);
            return true;
        }
        catch (SocketException)
        {
            return false;
        }
    }
}
