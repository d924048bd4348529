using Flushback.Cli.Output;
using Flushback.Contract.V1;
using Grpc.Core;

namespace Flushback.Cli.Commands;

/// <summary>How a command ends.</summary>
internal static class Outcome
{
    /// <summary>Does the work of a command; what goes wrong is told on standard error, in sentences.</summary>
    /// <param name="work">The work, which says how it ends when all goes well.</param>
    /// <param name="server">The service that is called; null for the one inside this program.</param>
    /// <param name="cancellation">Cancelled when the program is interrupted.</param>
    public static async Task<ExitCode> OfAsync(Func<Task<ExitCode>> work, Uri? server, CancellationToken cancellation)
    {
        try
        {
            return await work();
        }
        catch (BadInputException bad)
        {
            Complaints.Tell([bad.Message]);
            return ExitCode.BadInput;
        }
        catch (Exception) when (cancellation.IsCancellationRequested)
        {
            return ExitCode.Interrupted;
        }
        catch (RpcException refused)
        {
            return Refusal.Tell(refused, server);
        }
    }

    /// <summary>The end of a command that got its report.</summary>
    /// <param name="findings">How much each finding matters.</param>
    public static ExitCode Of(IEnumerable<Severity> findings) =>
        findings.All(severity => severity <= Severity.Note) ? ExitCode.Clean : ExitCode.Findings;
}
