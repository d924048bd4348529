using System.Net;
using Flushback.Service.Hosting;

namespace Flushback.Service.Security;

/// <summary>Refuses addresses that others reach where calls could be read or anybody may call.</summary>
internal static class AddressGuard
{
    /// <summary>Looks at every address before the service listens.</summary>
    /// <param name="endpoints">Name and URL of every address.</param>
    /// <param name="options">Whether a token is asked for, and whether none is needed.</param>
    /// <exception cref="RefusedStartException">An address is open to others without TLS or without a token.</exception>
    public static void Check(IEnumerable<(string Name, string Url)> endpoints, SecurityOptions options)
    {
        foreach ((string name, string url) in endpoints)
        {
            BindingAddress address = Parse(url);
            if (options.Insecure || IsThisMachineOnly(address))
            {
                continue;
            }

            string? missing =
                name == EndpointName.Metrics ? "asking who reads the metrics"
                : address.Scheme != Uri.UriSchemeHttps ? "TLS"
                : options.TokenFile is null ? "a token"
                : null;
            if (missing is not null)
            {
                throw new RefusedStartException(
                    $"The service does not listen on {url}, which other machines reach, without {missing}; use an https address with {SecurityOptions.Section}:{nameof(SecurityOptions.CertificateFile)} and {SecurityOptions.Section}:{nameof(SecurityOptions.TokenFile)}, listen on 127.0.0.1 behind a proxy, or say --insecure."
                );
            }
        }
    }

    private static BindingAddress Parse(string url)
    {
        try
        {
            return BindingAddress.Parse(url);
        }
        catch (FormatException)
        {
            throw new RefusedStartException(
                $"'{url}' is no address to listen on; write it as http://127.0.0.1:5210 or https://127.0.0.1:5210."
            );
        }
    }

    private static bool IsThisMachineOnly(BindingAddress address) =>
        address.IsUnixPipe
        || address.IsNamedPipe
        || address.Host.Equals("localhost", StringComparison.OrdinalIgnoreCase)
        || (IPAddress.TryParse(address.Host.Trim('[', ']'), out IPAddress? ip) && IPAddress.IsLoopback(ip));
}
