using System.Net;
using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;

namespace Flushback.Cli.Tests.Running;

/// <summary>A certificate for this machine, made for one test and signed by itself.</summary>
internal static class Certificate
{
    /// <summary>Writes the certificate and its key as PEM.</summary>
    public static void Write(string certificatePath, string keyPath)
    {
        using ECDsa key = ECDsa.Create(ECCurve.NamedCurves.nistP256);
        CertificateRequest request = new("CN=localhost", key, HashAlgorithmName.SHA256);
        SubjectAlternativeNameBuilder names = new();
        names.AddIpAddress(IPAddress.Loopback);
        request.CertificateExtensions.Add(names.Build());
        request.CertificateExtensions.Add(new X509BasicConstraintsExtension(true, false, 0, true));
        DateTimeOffset now = TimeProvider.System.GetUtcNow();
        using X509Certificate2 certificate = request.CreateSelfSigned(now.AddDays(-1), now.AddDays(1));
        File.WriteAllText(certificatePath, certificate.ExportCertificatePem());
        File.WriteAllText(keyPath, key.ExportPkcs8PrivateKeyPem());
    }
}
