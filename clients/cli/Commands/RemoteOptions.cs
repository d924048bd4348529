using System.CommandLine;
using System.CommandLine.Parsing;
using Flushback.Cli.Arguments;
using Flushback.Cli.Servers;

namespace Flushback.Cli.Commands;

/// <summary>What a command takes beside <c>--server</c>: how to be let in there, and how long to wait.</summary>
/// <remarks>
/// The same options for all commands. <see cref="JoinTo"/> puts them behind a command's own <c>--server</c>, so that a
/// command has them by being one of the program's.
/// </remarks>
internal static class RemoteOptions
{
    /// <summary>The option that names the file of the token.</summary>
    public const string TokenName = "--token-file";

    /// <summary>The option that names the file of who vouches for the service.</summary>
    public const string AuthorityName = "--authority-file";

    /// <summary>The option that names the file of the caller's own certificate.</summary>
    public const string CertificateName = "--certificate-file";

    /// <summary>The option that says how long to wait.</summary>
    public const string DeadlineName = "--deadline";

    // Far above what a call takes; it only ends the wait for a server that hangs.
    private static readonly TimeSpan _usualDeadline = TimeSpan.FromSeconds(60);

    private static readonly Option<string?> _token = OfFile(
        TokenName,
        "A file with the token that the service asks for."
    );

    private static readonly Option<string?> _authority = OfFile(
        AuthorityName,
        "Certificates, as PEM, of who vouches for the service; without it those that this machine trusts."
    );

    private static readonly Option<string?> _certificate = OfFile(
        CertificateName,
        "Your certificate, as PEM, where the service asks for one."
    );

    private static readonly Option<string?> _key = OfFile(
        "--key-file",
        "The key of your certificate, as PEM; without it the file of the certificate holds it too."
    );

    private static readonly Option<TimeSpan?> _deadline = ParsedOption.One<TimeSpan?>(
        DeadlineName,
        "TIME",
        "How long to wait for the answer, tries included, such as 500ms or 2min; a minute without it.",
        Wait.TryParse,
        Wait.Complaint
    );

    private static Option[] OfServer => [_token, _authority, _certificate, _key];

    /// <summary>Gives a command these options behind <c>--server</c>, but those it has itself; one without that is left alone.</summary>
    public static void JoinTo(Command command)
    {
        if (command.Options.FirstOrDefault(option => option.Name == ServiceOptions.ServerName) is not { } server)
        {
            return;
        }

        int behind = command.Options.IndexOf(server) + 1;
        foreach (Option option in (Option[])[_deadline, .. OfServer.Reverse()])
        {
            if (command.Options.All(own => own.Name != option.Name))
            {
                command.Options.Insert(behind, option);
            }
        }

        command.Validators.Add(given => RefuseWithoutServer(given, server));
    }

    /// <summary>When the answer has to be there.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="usual">How long to wait when it does not say; null for a minute.</param>
    public static DateTime DeadlineIn(ParseResult parsed, TimeSpan? usual = null) =>
        (TimeProvider.System.GetUtcNow() + (parsed.GetValue(_deadline) ?? usual ?? _usualDeadline)).UtcDateTime;

    /// <summary>What the command line says of being let in.</summary>
    /// <exception cref="BadInputException">A file cannot be read, or has no use or no place with this service.</exception>
    public static RemoteAccess AccessIn(ParseResult parsed, Uri server) =>
        RemoteAccess.Read(
            new RemoteAccess.Files(
                parsed.GetValue(_token),
                parsed.GetValue(_authority),
                parsed.GetValue(_certificate),
                parsed.GetValue(_key)
            ),
            server
        );

    private static void RefuseWithoutServer(CommandResult given, Option server)
    {
        if (
            given.GetResult(server) is null
            && OfServer.FirstOrDefault(option => given.GetResult(option) is not null) is { } idle
        )
        {
            given.AddError($"{idle.Name} is for a service that runs elsewhere; name it with {server.Name}.");
        }
    }

    private static Option<string?> OfFile(string name, string description) =>
        new(name) { HelpName = "FILE", Description = description };
}
