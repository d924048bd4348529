using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Flushback.Service.Hosting;
using Microsoft.AspNetCore.Server.Kestrel.Https;

namespace Flushback.Service.Security;

/// <summary>Takes only callers whose certificate one of our authorities signed, whatever else the machine trusts.</summary>
internal sealed class ClientAuthority
{
    private const string ClientUse = "1.3.6.1.5.5.7.3.2";

    private readonly X509Certificate2Collection _authorities = [];

    /// <summary>Reads the authorities.</summary>
    /// <exception cref="RefusedStartException">They cannot be read.</exception>
    public ClientAuthority(string path)
    {
        try
        {
            _authorities.ImportFromPemFile(path);
        }
        catch (Exception fault) when (fault is IOException or UnauthorizedAccessException or CryptographicException)
        {
            throw new RefusedStartException($"The authorities in '{path}' cannot be read: {fault.Message}");
        }

        if (_authorities.Count == 0)
        {
            throw new RefusedStartException($"'{path}' holds no certificate; write the authorities into it as PEM.");
        }
    }

    /// <summary>Asks every caller for a certificate.</summary>
    public void Ask(HttpsConnectionAdapterOptions https)
    {
        https.ClientCertificateMode = ClientCertificateMode.RequireCertificate;
        https.ClientCertificateValidation = (certificate, _, _) => IsSignedByOurs(certificate);
    }

    private bool IsSignedByOurs(X509Certificate2 certificate)
    {
        using X509Chain chain = new();
        chain.ChainPolicy.TrustMode = X509ChainTrustMode.CustomRootTrust;
        chain.ChainPolicy.CustomTrustStore.AddRange(_authorities);
        chain.ChainPolicy.RevocationMode = X509RevocationMode.NoCheck;
        chain.ChainPolicy.ApplicationPolicy.Add(new Oid(ClientUse));
        return chain.Build(certificate);
    }
}
