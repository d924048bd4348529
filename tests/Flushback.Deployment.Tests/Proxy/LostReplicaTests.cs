using System.Collections.Concurrent;
using Flushback.Deployment.Tests.Running;
using Google.Protobuf;
using Grpc.Net.Client;

namespace Flushback.Deployment.Tests.Proxy;

/// <summary>Replicas that die under load, one after the other: no check is lost, and none is answered otherwise.</summary>
[Collection(Published.Name)]
public sealed class LostReplicaTests(PublishedService published)
{
    private const int Callers = 8;
    private static readonly TimeSpan _between = TimeSpan.FromSeconds(1);

    [Fact]
    public async Task A_library_is_checked_to_its_end_while_one_replica_after_the_other_is_killed()
    {
        int[] ports = [Ports.Free(), Ports.Free()];
        Replica[] replicas =
        [
            await Replica.StartAsync(published, ports[0]),
            await Replica.StartAsync(published, ports[1]),
        ];
        await using Nginx nginx = await Nginx.StartAsync([.. replicas.Select(replica => replica.Address)]);
        IReadOnlyList<Wire.CheckRequest> library = Checks.Library();
        ByteString[] right =
        [
            .. await Task.WhenAll(
                library.Select(async request => (await replicas[0].Checker.CheckAsync(request)).ToByteString())
            ),
        ];
        ConcurrentBag<(int Knife, ByteString Answer)> answers = [];
        using CancellationTokenSource enough = new();
        Task[] callers =
        [
            .. Enumerable.Range(0, Callers).Select(_ => CallAsync(nginx, library, answers, enough.Token)),
        ];

        for (int i = 0; i < replicas.Length; i++)
        {
            await Task.Delay(_between);
            replicas[i].Program.Kill();
            await Task.Delay(_between);
            await replicas[i].DisposeAsync();
            replicas[i] = await Replica.StartAsync(published, ports[i]);
        }

        await Task.Delay(_between);
        await enough.CancelAsync();
        await Task.WhenAll(callers);

        Assert.True(answers.Count > Callers * 10, $"Only {answers.Count} checks were answered.");
        Assert.All(answers, answer => Assert.Equal(right[answer.Knife], answer.Answer));
        foreach (Replica replica in replicas)
        {
            await replica.DisposeAsync();
        }
    }

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
