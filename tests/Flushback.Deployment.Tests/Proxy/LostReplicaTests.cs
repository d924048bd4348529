using System.Collections.Concurrent;
using System.Globalization;
using Flushback.Deployment.Tests.Running;
using Flushback.Service.Tests.Hosting;
using Google.Protobuf;
using Grpc.Net.Client;
using Xunit.Abstractions;

namespace Flushback.Deployment.Tests.Proxy;

/// <summary>Replicas that die under load, one after the other: no check is lost, and none is answered otherwise.</summary>
/// <remarks>FLUSHBACK_FAULT_ROUNDS says how often each of them dies.</remarks>
[Collection(Published.Name)]
public sealed class LostReplicaTests(PublishedService published, ITestOutputHelper output)
{
    private const int Callers = 8;

    // So many that every caller has been answered, and the loss of a replica has met some of them.
    private const int Between = 5 * Callers;

    [Fact]
    public async Task A_library_is_checked_to_its_end_while_one_replica_after_the_other_is_killed()
    {
        IReadOnlyList<Wire.CheckRequest> library = Checks.Library();
        Replica[] replicas = [await Replica.StartAsync(published), await Replica.StartAsync(published)];
        try
        {
            ByteString[] right = [.. await Task.WhenAll(library.Select(request => AskAsync(replicas[0], request)))];
            await using Nginx nginx = await Nginx.StartAsync([.. replicas.Select(replica => replica.Address)]);
            ConcurrentBag<(int Knife, ByteString Answer)> answers = [];
            using CancellationTokenSource enough = new();
            Task[] callers =
            [
                .. Enumerable.Range(0, Callers).Select(_ => CallAsync(nginx, library, answers, enough.Token)),
            ];

            await KillInTurnAsync(replicas, answers);
            await enough.CancelAsync();
            await Task.WhenAll(callers);

            Assert.All(answers, answer => Assert.Equal(right[answer.Knife], answer.Answer));
            output.WriteLine($"{answers.Count} checks, all answered rightly.");
        }
        finally
        {
            foreach (Replica replica in replicas)
            {
                await replica.DisposeAsync();
            }
        }
    }

    private async Task KillInTurnAsync(Replica[] replicas, IReadOnlyCollection<(int Knife, ByteString Answer)> answers)
    {
        int rounds = int.Parse(
            Environment.GetEnvironmentVariable("FLUSHBACK_FAULT_ROUNDS") ?? "1",
            CultureInfo.InvariantCulture
        );
        for (int i = 0; i < rounds * replicas.Length; i++)
        {
            int which = i % replicas.Length;
            await MoreAsync(answers);
            replicas[which].Program.Kill();
            await MoreAsync(answers);
            replicas[which] = await replicas[which].ReplaceAsync(published);
        }

        await MoreAsync(answers);
    }

    private static Task MoreAsync(IReadOnlyCollection<(int Knife, ByteString Answer)> answers)
    {
        int before = answers.Count;
        return Eventually.IsTrueAsync(() => answers.Count >= before + Between);
    }

    private static async Task<ByteString> AskAsync(Replica replica, Wire.CheckRequest request) =>
        (await replica.Checker.CheckAsync(request)).ToByteString();

    // Whoever is told to stop finishes the check under way: a lost one would fail the test.
    private static async Task CallAsync(
        Nginx nginx,
        IReadOnlyList<Wire.CheckRequest> library,
        ConcurrentBag<(int, ByteString)> answers,
        CancellationToken enough
    )
    {
        using GrpcChannel channel = nginx.Open();
        Wire.ProfileChecker.ProfileCheckerClient checker = new(channel);
        for (int i = 0; !enough.IsCancellationRequested; i = (i + 1) % library.Count)
        {
            answers.Add(
                (i, (await checker.CheckAsync(library[i], cancellationToken: CancellationToken.None)).ToByteString())
            );
        }
    }
}
