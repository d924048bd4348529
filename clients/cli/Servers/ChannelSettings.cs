using Grpc.Core;
using Grpc.Net.Client;
using Grpc.Net.Client.Configuration;

namespace Flushback.Cli.Servers;

/// <summary>How this program calls a service: what it tries again, and how large an answer it takes.</summary>
internal static class ChannelSettings
{
    // A page, a curve of thousands of samples and a drawing together go beyond gRPC's own 4 MB.
    private const int LargestAnswerBytes = 256 * 1024 * 1024;

    // A request can only be sent again when it was kept; the largest is a drawing.
    private const int LargestKeptBytes = 80 * 1024 * 1024;

    private const int MostTries = 5;

    private static readonly MethodName LibraryStream = new()
    {
        Service = "flushback.v1.ProfileChecker",
        Method = "CheckMany",
    };

    /// <summary>The settings of a channel.</summary>
    /// <param name="handler">Makes the connections; null for the usual ones.</param>
    public static GrpcChannelOptions With(SocketsHttpHandler? handler) =>
        new()
        {
            HttpHandler = handler,
            MaxReceiveMessageSize = LargestAnswerBytes,
            MaxRetryAttempts = MostTries,
            MaxRetryBufferPerCallSize = LargestKeptBytes,
            MaxRetryBufferSize = 2L * LargestKeptBytes,
            ServiceConfig = new ServiceConfig { MethodConfigs = { TryAgain(), Never(LibraryStream) } },
        };

    // Whoever sends a library sends what is not answered over a new stream, which is less than all of the old one.
    private static MethodConfig Never(MethodName method) => new() { Names = { method } };

    // A check changes nothing on the service, so that it may be asked for again whenever none answered; a service that
    // is busy says by itself when. Every other status is an answer, and would be the same again.
    private static MethodConfig TryAgain() =>
        new()
        {
            Names = { MethodName.Default },
            RetryPolicy = new RetryPolicy
            {
                MaxAttempts = MostTries,
                InitialBackoff = TimeSpan.FromMilliseconds(100),
                MaxBackoff = TimeSpan.FromSeconds(2),
                BackoffMultiplier = 2,
                RetryableStatusCodes = { StatusCode.Unavailable },
            },
        };
}
