using System.CommandLine;
using Flushback.Cli.Servers;
using Grpc.Core;

namespace Flushback.Cli.Commands;

/// <summary>The options that say which service answers.</summary>
internal sealed class ServiceOptions
{
    /// <summary>The option that names a service.</summary>
    public const string ServerName = "--server";

    // A stream tells how far it has come, so that nobody waits for one that hangs without seeing it.
    private static readonly TimeSpan LongestStream = TimeSpan.FromMinutes(30);

    private readonly Option<Uri?> _server = ParsedOption.One<Uri?>(
        ServerName,
        "URL",
        "A running service, such as http://127.0.0.1:5210; without it one is started inside this program.",
        ServerAddress.TryParse,
        ServerAddress.Complaint
    );

    private readonly Option<bool> _verbose = new("--verbose")
    {
        Description = "Prints what the service inside this program logs, to standard error.",
    };

    /// <summary>Which service to call.</summary>
    public Option Server => _server;

    /// <summary>Whether the service inside may speak.</summary>
    public Option Verbose => _verbose;

    /// <summary>The service that is named; null for the one inside this program.</summary>
    public Uri? AddressIn(ParseResult parsed) => parsed.GetValue(_server);

    /// <summary>Gives a command its options and what it does; what goes wrong is told with the service that was called.</summary>
    /// <param name="command">The command.</param>
    /// <param name="options">Its options, in the order of the help.</param>
    /// <param name="run">What it does.</param>
    public void Join(
        Command command,
        IEnumerable<Option> options,
        Func<ParseResult, CancellationToken, Task<ExitCode>> run
    )
    {
        foreach (Option option in options)
        {
            command.Add(option);
        }

        command.SetAction(
            async (parsed, cancellation) =>
                (int)await Outcome.OfAsync(() => run(parsed, cancellation), AddressIn(parsed), cancellation)
        );
    }

    /// <summary>Calls the service and waits for its answer.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="call">The call, over a channel and with its deadline.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="RpcException">The service refuses, fails or does not answer.</exception>
    public async Task<TResponse> CallAsync<TResponse>(
        ParseResult parsed,
        Func<ChannelBase, CallOptions, AsyncUnaryCall<TResponse>> call,
        CancellationToken cancellation
    )
    {
        await using ServerConnection connection = await ConnectAsync(parsed, cancellation);
        return await call(connection.Channel, connection.ToCall(RemoteOptions.DeadlineIn(parsed), cancellation));
    }

    /// <summary>Calls the service and reads its stream of answers to the end.</summary>
    /// <param name="parsed">The command line.</param>
    /// <param name="call">The call, over a channel and with its deadline.</param>
    /// <param name="take">Takes an answer.</param>
    /// <param name="cancellation">Gives up.</param>
    /// <exception cref="RpcException">The service refuses, fails or does not answer.</exception>
    public async Task ReadAsync<TResponse>(
        ParseResult parsed,
        Func<ChannelBase, CallOptions, AsyncServerStreamingCall<TResponse>> call,
        Action<TResponse> take,
        CancellationToken cancellation
    )
    {
        await using ServerConnection connection = await ConnectAsync(parsed, cancellation);
        using AsyncServerStreamingCall<TResponse> answers = call(
            connection.Channel,
            connection.ToCall(RemoteOptions.DeadlineIn(parsed, LongestStream), cancellation)
        );
        while (await answers.ResponseStream.MoveNext(cancellation))
        {
            take(answers.ResponseStream.Current);
        }
    }

    /// <summary>Opens a way to the service, for a command that makes its calls by itself.</summary>
    /// <exception cref="BadInputException">What the command line says of being let in cannot be used.</exception>
    public async Task<ServerConnection> ConnectAsync(ParseResult parsed, CancellationToken cancellation) =>
        AddressIn(parsed) is { } address
            ? ServerConnection.To(address, RemoteOptions.AccessIn(parsed, address))
            : await OwnServer.StartAsync(parsed.GetValue(_verbose), cancellation);
}
