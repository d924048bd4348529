using System.Security.Authentication;
using Flushback.Cli.Commands;
using Google.Rpc;
using Grpc.Core;

namespace Flushback.Cli.Output;

/// <summary>What a service answers when it does not answer with a report.</summary>
internal static class Refusal
{
    /// <summary>Prints it, and says how the program ends.</summary>
    /// <param name="refused">The service's status.</param>
    /// <param name="server">The service that was called; null for the one inside this program.</param>
    public static ExitCode Tell(RpcException refused, Uri? server)
    {
        string who = server is null ? "The service inside this program" : $"The service at {server}";
        switch (refused.StatusCode)
        {
            case StatusCode.InvalidArgument:
                Complaints.Tell(SentencesOf(refused));
                return ExitCode.BadInput;
            case StatusCode.ResourceExhausted:
                Complaints.Tell([refused.Status.Detail]);
                return ExitCode.BadInput;
            case StatusCode.Unavailable or StatusCode.Internal when HasCause<AuthenticationException>(refused):
                Complaints.Tell([
                    $"{who} shows a certificate that this machine does not trust; name who vouches for it with {RemoteOptions.AuthorityName}.",
                ]);
                return ExitCode.NoServer;
            case StatusCode.Unavailable when refused.GetRpcStatus()?.GetDetail<RetryInfo>() is not null:
                Complaints.Tell([refused.Status.Detail]);
                return ExitCode.NoServer;
            // TLS tells a caller late that he is not let in, and not why.
            case StatusCode.Unavailable
            or StatusCode.Internal when server?.Scheme == Uri.UriSchemeHttps && HasCause<HttpRequestException>(refused):
                Complaints.Tell([
                    $"{who} cannot be reached, or asks for a certificate that it knows; start it, or name yours with {RemoteOptions.CertificateName}.",
                ]);
                return ExitCode.NoServer;
            case StatusCode.Unavailable:
                Complaints.Tell([$"{who} cannot be reached; start it, or leave out --server to use the one inside."]);
                return ExitCode.NoServer;
            case StatusCode.DeadlineExceeded:
                Complaints.Tell([
                    $"{who} did not answer in time; try again, or give it longer with {RemoteOptions.DeadlineName}.",
                ]);
                return ExitCode.NoServer;
            case StatusCode.Unauthenticated:
                Complaints.Tell([
                    $"{who} lets nobody in without a token it knows; name the file that holds yours with {RemoteOptions.TokenName}.",
                ]);
                return ExitCode.NoServer;
            case StatusCode.Unimplemented:
                Complaints.Tell([$"{who} answers, but it is not a Flushback service of this version."]);
                return ExitCode.NoServer;
            case StatusCode.Internal when server is null:
                Complaints.Tell([$"{refused.Status.Detail} Run it again with --verbose to see the log."]);
                return ExitCode.NoServer;
            default:
                Complaints.Tell([$"{who} failed: {refused.Status.Detail}"]);
                return ExitCode.NoServer;
        }
    }

    private static bool HasCause<TCause>(RpcException refused)
        where TCause : Exception
    {
        Exception? cause = refused.Status.DebugException;
        while (cause is not null and not TCause)
        {
            cause = cause.InnerException;
        }

        return cause is not null;
    }

    private static IEnumerable<string> SentencesOf(RpcException refused)
    {
        BadRequest? details = refused.GetRpcStatus()?.GetDetail<BadRequest>();
        return details is null
            ? [refused.Status.Detail]
            : details
                .FieldViolations.Select(violation => violation.Description + OptionHint.For(violation.Field))
                .Distinct();
    }
}
