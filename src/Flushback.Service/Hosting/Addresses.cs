using Flushback.Service.Security;
using Flushback.Service.Telemetry;
using Flushback.Service.Web;
using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Flushback.Service.Hosting;

/// <summary>Where the service listens, gathered from all the ways in which it can be said into one section.</summary>
internal sealed class Addresses
{
    private const string EndpointsSection = "Kestrel:Endpoints";

    private readonly ConfigurationManager _configuration;
    private readonly SecurityOptions _security;
    private readonly Dictionary<string, string?> _settings = [];

    private Addresses(ConfigurationManager configuration, SecurityOptions security) =>
        (_configuration, _security) = (configuration, security);

    /// <summary>
    /// Puts every address into the section Kestrel:Endpoints, with what gRPC needs there, and refuses those that are not
    /// safe.
    /// </summary>
    /// <exception cref="RefusedStartException">An address is open to others without TLS or without a token.</exception>
    public static void Settle(WebApplicationBuilder builder, SecurityOptions security)
    {
        Addresses addresses = new(builder.Configuration, security);
        addresses.AddUrls();
        addresses.AddOwn(EndpointName.Web, WebOptions.From(builder.Configuration).Url);
        addresses.AddOwn(EndpointName.Metrics, TelemetrySetup.Options(builder.Configuration).MetricsUrl);
        builder.Configuration.AddInMemoryCollection(addresses._settings);
        addresses.Complete();
        addresses.LeaveNoneElsewhere();
        builder.Configuration.AddInMemoryCollection(addresses._settings);
        AddressGuard.Check(addresses.All(), security);
        builder.WebHost.ConfigureKestrel(NameEndpoints);
    }

    private void AddUrls()
    {
        string? urls = _configuration[WebHostDefaults.ServerUrlsKey];
        bool isNamedElsewhere = _configuration.GetSection(EndpointsSection).Exists();
        if (string.IsNullOrWhiteSpace(urls))
        {
            if (!isNamedElsewhere)
            {
                _settings[$"{EndpointsSection}:Grpc:Url"] = FlushbackHost.DefaultAddress;
                _settings[$"{EndpointsSection}:{EndpointName.Web}:Url"] = FlushbackHost.DefaultWebAddress;
            }

            return;
        }

        string[] each = urls.Split(';', StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries);
        for (int i = 0; i < each.Length; i++)
        {
            _settings[$"{EndpointsSection}:Grpc{i}:Url"] = each[i];
        }
    }

    private void AddOwn(string name, string? url)
    {
        if (url is { Length: > 0 })
        {
            _settings[$"{EndpointsSection}:{name}:Url"] = url;
        }
    }

    // gRPC needs HTTP/2. With TLS client and server agree on it, and a page may have HTTP/1.1; without TLS there is
    // nothing to agree by, so that each address speaks one.
    private void Complete()
    {
        foreach ((string name, string url) in All())
        {
            bool isTls = url.StartsWith("https:", StringComparison.OrdinalIgnoreCase);
            string protocols =
                isTls ? nameof(HttpProtocols.Http1AndHttp2)
                : name is EndpointName.Web or EndpointName.Metrics ? nameof(HttpProtocols.Http1)
                : nameof(HttpProtocols.Http2);
            SetIfAbsent(name, "Protocols", protocols);
            if (isTls && _security.CertificateFile is { } certificate)
            {
                SetIfAbsent(name, "Certificate:Path", certificate);
                SetIfAbsent(name, "Certificate:KeyPath", _security.KeyFile);
            }
        }
    }

    // All addresses stand in one section now; left where they came from too, they would be complained of.
    private void LeaveNoneElsewhere()
    {
        foreach (string key in (string[])[WebHostDefaults.ServerUrlsKey, "http_ports", "https_ports"])
        {
            _settings[key] = "";
        }
    }

    private void SetIfAbsent(string name, string key, string? value)
    {
        string path = $"{EndpointsSection}:{name}:{key}";
        if (_configuration[path] is null)
        {
            _settings[path] = value;
        }
    }

    private IEnumerable<(string Name, string Url)> All() =>
        _configuration
            .GetSection(EndpointsSection)
            .GetChildren()
            .Where(endpoint => endpoint["Url"] is not null)
            .Select(endpoint => (endpoint.Key, endpoint["Url"]!));

    private static void NameEndpoints(KestrelServerOptions kestrel)
    {
        foreach (string name in (string[])[EndpointName.Web, EndpointName.Metrics])
        {
            EndpointName feature = new(name);
            kestrel.ConfigurationLoader?.Endpoint(
                name,
                endpoint =>
                    endpoint.ListenOptions.Use(next =>
                        connection =>
                        {
                            connection.Features.Set(feature);
                            return next(connection);
                        }
                    )
            );
        }
    }
}
