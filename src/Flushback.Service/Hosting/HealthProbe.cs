using Grpc.Core;
using Grpc.Health.V1;
using Grpc.Net.Client;

namespace Flushback.Service.Hosting;

/// <summary>Asks a running service for its health, for containers that have no other program to do so.</summary>
internal static class HealthProbe
{
    /// <summary>The first argument that asks for it.</summary>
    public const string Command = "health";

    private static readonly TimeSpan _longestWait = TimeSpan.FromSeconds(3);

    /// <summary>Asks once.</summary>
    /// <param name="args">Address, the default one without it; then what to ask for, <c>ready</c> without it.</param>
    /// <returns>The exit code: 0 when it serves, 1 when it does not or cannot be reached.</returns>
    public static async Task<int> RunAsync(string[] args)
    {
        string address = args.ElementAtOrDefault(0) ?? FlushbackHost.DefaultAddress;
        string service = args.ElementAtOrDefault(1) ?? HealthSetup.Ready;
        try
        {
            using GrpcChannel channel = GrpcChannel.ForAddress(address);
            HealthCheckResponse health = await new Health.HealthClient(channel).CheckAsync(
                new HealthCheckRequest { Service = service },
                deadline: (TimeProvider.System.GetUtcNow() + _longestWait).UtcDateTime
            );
            await Console.Out.WriteLineAsync(health.Status.ToString());
            return health.Status == HealthCheckResponse.Types.ServingStatus.Serving ? 0 : 1;
        }
        catch (Exception fault) when (fault is RpcException or UriFormatException or ArgumentException)
        {
            await Console.Error.WriteLineAsync(
                $"{address} does not answer: {(fault as RpcException)?.Status.Detail ?? fault.Message}"
            );
            return 1;
        }
    }
}
