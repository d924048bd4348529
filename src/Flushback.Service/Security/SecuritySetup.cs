using Microsoft.AspNetCore.Server.Kestrel.Core;

namespace Flushback.Service.Security;

/// <summary>Puts the checks of callers in place.</summary>
internal static class SecuritySetup
{
    private const string InsecureSwitch = "--insecure";

    /// <summary>The command line with <c>--insecure</c>, which stands alone, as a setting with its value.</summary>
    public static string[] WithSwitches(string[] args) =>
        [
            .. args.Select(arg =>
                arg == InsecureSwitch ? $"--{SecurityOptions.Section}:{nameof(SecurityOptions.Insecure)}=true" : arg
            ),
        ];

    /// <summary>Asks for certificates and reads the tokens, where the configuration says so.</summary>
    /// <exception cref="Hosting.RefusedStartException">A file that is named cannot be used.</exception>
    public static void AddSecurity(this WebApplicationBuilder builder, SecurityOptions options)
    {
        if (options.ClientAuthorityFile is { Length: > 0 } authorities)
        {
            ClientAuthority authority = new(authorities);
            builder.WebHost.ConfigureKestrel(
                (KestrelServerOptions kestrel) => kestrel.ConfigureHttpsDefaults(authority.Ask)
            );
        }

        if (options.TokenFile is { Length: > 0 } path)
        {
            builder.Services.AddSingleton(provider => new TokenFile(
                path,
                TimeProvider.System,
                provider.GetRequiredService<ILogger<TokenFile>>()
            ));
        }
    }

    /// <summary>Checks tokens, where there are any.</summary>
    public static void UseTokens(this WebApplication app)
    {
        if (app.Services.GetService<TokenFile>() is not null)
        {
            app.UseMiddleware<TokenCheck>();
        }
    }
}
