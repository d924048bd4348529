using System.Security.Cryptography;
using System.Security.Cryptography.X509Certificates;
using Flushback.Cli.Commands;
using Grpc.Core;

namespace Flushback.Cli.Servers;

/// <summary>What a service that runs elsewhere asks of its callers, and by what they know it.</summary>
/// <param name="Token">Shown with every call; null for none.</param>
/// <param name="Authorities">Whose certificates are trusted; null for those that the machine trusts.</param>
/// <param name="Certificate">Shown to the service, with its key; null for none.</param>
internal sealed record RemoteAccess(
    string? Token,
    X509Certificate2Collection? Authorities,
    X509Certificate2? Certificate
)
{
    /// <summary>The files that hold it.</summary>
    /// <param name="Token">A token on its first line.</param>
    /// <param name="Authority">Certificates as PEM.</param>
    /// <param name="Certificate">A certificate as PEM.</param>
    /// <param name="Key">Its key as PEM; null where the certificate's file holds it too.</param>
    internal sealed record Files(string? Token, string? Authority, string? Certificate, string? Key);

    /// <summary>Reads the files for a service.</summary>
    /// <exception cref="BadInputException">A file cannot be read, or has no use or no place with this service.</exception>
    public static RemoteAccess Read(Files files, Uri server)
    {
        bool isPlain = server.Scheme == Uri.UriSchemeHttp;
        if (isPlain && (files.Authority ?? files.Certificate ?? files.Key) is { } unused)
        {
            throw new BadInputException(
                $"'{unused}' has no use with {server}, which is called without TLS; write https://."
            );
        }

        if (isPlain && files.Token is not null && !server.IsLoopback)
        {
            throw new BadInputException($"The token would travel in the clear to {server}; write https://.");
        }

        if (files.Key is not null && files.Certificate is null)
        {
            throw new BadInputException(
                $"'{files.Key}' is the key of a certificate that is not named; name it with {RemoteOptions.CertificateName}."
            );
        }

        return new RemoteAccess(
            From(files.Token, ReadToken),
            From(files.Authority, ReadAuthorities),
            From(files.Certificate, path => ReadCertificate(path, files.Key))
        );
    }

    /// <summary>What goes before every call.</summary>
    public Metadata Headers => Token is null ? [] : new Metadata { { "authorization", $"Bearer {Token}" } };

    /// <summary>Makes connections that trust and show what was read.</summary>
    public SocketsHttpHandler ToHandler()
    {
        SocketsHttpHandler handler = new();
        if (Authorities is not null)
        {
            X509ChainPolicy policy = new()
            {
                TrustMode = X509ChainTrustMode.CustomRootTrust,
                // An authority of a workshop publishes no list of what it took back.
                RevocationMode = X509RevocationMode.NoCheck,
            };
            policy.CustomTrustStore.AddRange(Authorities);
            handler.SslOptions.CertificateChainPolicy = policy;
        }

        if (Certificate is not null)
        {
            handler.SslOptions.ClientCertificates = [Certificate];
        }

        return handler;
    }

    private static T? From<T>(string? path, Func<string, T> read)
        where T : class
    {
        try
        {
            return path is null ? null : read(path);
        }
        catch (Exception fault) when (fault is FileNotFoundException or DirectoryNotFoundException)
        {
            throw new BadInputException($"There is no file '{path}'; check the name and the folder.");
        }
        catch (Exception fault)
            when (fault is IOException or UnauthorizedAccessException or ArgumentException or CryptographicException)
        {
            throw new BadInputException($"'{path}' cannot be read: {fault.Message}");
        }
    }

    private static string ReadToken(string path)
    {
        string token = File.ReadLines(path).FirstOrDefault("").Trim();
        return token.Length > 0 && token.All(character => character is > ' ' and <= '~')
            ? token
            : throw new BadInputException(
                $"'{path}' holds no token on its first line; write it there and nothing else."
            );
    }

    private static X509Certificate2Collection ReadAuthorities(string path)
    {
        X509Certificate2Collection authorities = [];
        authorities.ImportFromPemFile(path);
        return authorities.Count > 0
            ? authorities
            : throw new BadInputException($"'{path}' holds no certificate; write the authorities into it as PEM.");
    }

    private static X509Certificate2 ReadCertificate(string path, string? keyPath)
    {
        using X509Certificate2 read = X509Certificate2.CreateFromPemFile(path, keyPath ?? path);

        // By way of a file's bytes, because a key that was only just read is not shown in a handshake everywhere.
        return X509CertificateLoader.LoadPkcs12(read.Export(X509ContentType.Pfx), null);
    }
}
