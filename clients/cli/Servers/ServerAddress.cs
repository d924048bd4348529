using System.Diagnostics.CodeAnalysis;

namespace Flushback.Cli.Servers;

/// <summary>Addresses of a running service on the command line.</summary>
internal static class ServerAddress
{
    /// <summary>What is wrong with a text that is no address.</summary>
    public static string Complaint(string text) =>
        $"'{text}' is not the address of a service: write http://host:port or https://host:port.";

    /// <summary>Reads an address.</summary>
    public static bool TryParse(string text, [NotNullWhen(true)] out Uri? address) =>
        Uri.TryCreate(text, UriKind.Absolute, out address)
        && (address.Scheme == Uri.UriSchemeHttp || address.Scheme == Uri.UriSchemeHttps)
        && address.PathAndQuery == "/";
}
