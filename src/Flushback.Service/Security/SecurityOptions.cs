namespace Flushback.Service.Security;

/// <summary>Who may call, and how calls are kept from others. Bound from the configuration section <see cref="Section"/>.</summary>
public sealed class SecurityOptions
{
    /// <summary>Name of the configuration section.</summary>
    public const string Section = "Security";

    /// <summary>Certificate of the https addresses, as PEM with the chain behind it.</summary>
    /// <value>Default: none; an https address then needs a certificate of its own in the section Kestrel.</value>
    public string? CertificateFile { get; set; }

    /// <summary>Key of <see cref="CertificateFile"/>, as PEM.</summary>
    /// <value>Default: none.</value>
    public string? KeyFile { get; set; }

    /// <summary>Authorities, as PEM, one of which must have signed the certificate of every caller.</summary>
    /// <value>Default: none; callers need no certificate.</value>
    public string? ClientAuthorityFile { get; set; }

    /// <summary>Tokens, one a line, one of which every caller must show; read anew when the file changes.</summary>
    /// <value>Default: none; callers need no token.</value>
    public string? TokenFile { get; set; }

    /// <summary>True to listen beyond this machine without TLS or without a token.</summary>
    /// <value>Default: false. The command line's <c>--insecure</c>.</value>
    public bool Insecure { get; set; }

    /// <summary>The section of a configuration.</summary>
    internal static SecurityOptions From(IConfiguration configuration)
    {
        SecurityOptions options = new();
        configuration.GetSection(Section).Bind(options, binder => binder.ErrorOnUnknownConfiguration = true);
        return options;
    }
}
