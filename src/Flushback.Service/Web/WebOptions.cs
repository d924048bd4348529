namespace Flushback.Service.Web;

/// <summary>Which pages may call by gRPC-Web, and where. Bound from the configuration section <see cref="Section"/>.</summary>
public sealed class WebOptions
{
    /// <summary>Name of the configuration section.</summary>
    public const string Section = "Web";

    /// <summary>Address without TLS for pages, which speak HTTP/1.1 there; https addresses serve pages anyhow.</summary>
    /// <value>Default: none beside the one that the service has when no address at all is configured.</value>
    public string? Url { get; set; }

    /// <summary>Origins of the pages that a browser lets call, such as https://bench.example.</summary>
    /// <value>Default: none.</value>
    public IList<string> Origins { get; } = [];

    /// <summary>The section of a configuration.</summary>
    internal static WebOptions From(IConfiguration configuration)
    {
        WebOptions options = new();
        configuration.GetSection(Section).Bind(options, binder => binder.ErrorOnUnknownConfiguration = true);
        return options;
    }
}
