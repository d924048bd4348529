using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Flushback.Service.Tests.Security;

/// <summary>An authority and what it signs, made for one test, in a folder that goes with it.</summary>
public sealed class Certificates : IDisposable
{
    private const string ServerUse = "1.3.6.1.5.5.7.3.1";
    private const string ClientUse = "1.3.6.1.5.5.7.3.2";

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("flushback-certificates-");
    private readonly ECDsa _key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
    private readonly X509Certificate2 _authority;

    /// <summary>Makes the authority.</summary>
    public Certificates()
    {
        CertificateRequest request = new("CN=Test authority", _key, HashAlgorithmName.SHA256);
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        DateTimeOffset now = TimeProvider.System.GetUtcNow();
        _authority = request.CreateSelfSigned(now.AddDays(-1), now.AddDays(2));
        File.WriteAllText(AuthorityFile, _authority.ExportCertificatePem());
    }

    /// <summary>Path of the authority's certificate.</summary>
    public string AuthorityFile => PathOf("authority.pem");

    /// <summary>A path in the folder.</summary>
    public string PathOf(string name) => Path.Combine(_folder.FullName, name);

    /// <summary>Writes a certificate for this machine and its key; gives their paths.</summary>
    public (string Certificate, string Key) WriteServer()
    {
        using X509Certificate2 signed = Sign("CN=localhost", ServerUse);
        return Write("server", signed);
    }

    /// <summary>Writes a certificate to call with and its key; gives their paths.</summary>
    public (string Certificate, string Key) WriteClient()
    {
        using X509Certificate2 signed = Client();
        return Write("client", signed);
    }

    /// <summary>A certificate to call with.</summary>
    public X509Certificate2 Client() => Sign("CN=A maker", ClientUse);

    /// <summary>A handler that trusts this authority and shows a certificate, if any.</summary>
    public SocketsHttpHandler Handler(X509Certificate2? client = null)
    {
        SocketsHttpHandler handler = new();
        handler.SslOptions.CertificateChainPolicy = new X509ChainPolicy
        {
            TrustMode = X509ChainTrustMode.CustomRootTrust,
            CustomTrustStore = { _authority },
            RevocationMode = X509RevocationMode.NoCheck,
        };
        if (client is not null)
        {
            handler.SslOptions.ClientCertificates = [client];
        }

        return handler;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        _authority.Dispose();
        _key.Dispose();
        _folder.Delete(recursive: true);
    }

    private (string Certificate, string Key) Write(string name, X509Certificate2 signed)
    {
        (string certificate, string key) = (PathOf($"{name}.pem"), PathOf($"{name}.key"));
        File.WriteAllText(certificate, signed.ExportCertificatePem());
        File.WriteAllText(key, signed.GetECDsaPrivateKey()!.ExportPkcs8PrivateKeyPem());
        return (certificate, key);
    }

    private X509Certificate2 Sign(string name, string use)
    {
        using ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        CertificateRequest request = new(name, key, HashAlgorithmName.SHA256);
        SubjectAlternativeNameBuilder names = new();
        names.AddIpAddress(IPAddress.Loopback);
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509EnhancedKeyUsageExtension([new Oid(use)], critical: false));
        DateTimeOffset now = TimeProvider.System.GetUtcNow();
        using X509Certificate2 signed = request.Create(
            _authority,
            now.AddHours(-1),
            now.AddDays(1),
            RandomNumberGenerator.GetBytes(8)
        );
        using X509Certificate2 withKey = signed.CopyWithPrivateKey(key);

        // By way of a file's bytes, because a key that was only just made is not shown in a handshake everywhere.
        return X509CertificateLoader.LoadPkcs12(withKey.Export(X509ContentType.Pfx), null);
    }
}
