using CsCheck;
using Flushback.Service.Queueing;

namespace Flushback.Service.Tests.Queueing;

public sealed class WorkGateTests
{
    [Fact]
    public async Task A_single_check_waits_behind_one_item_of_a_library_and_not_behind_all()
    {
        WorkGate gate = new(parallel: 1, inFlight: 100);
        Turn running = await gate.EnterAsync("library", default);
        List<string> served = [];
        List<Task> all = [];
        for (int i = 0; i < 50; i++)
        {
            all.Add(ServeAsync(gate, "library", served));
        }

        all.Add(ServeAsync(gate, "single", served));
        running.Dispose();
        await Task.WhenAll(all);

        Assert.Equal(1, served.IndexOf("single"));
    }

    [Fact]
    public async Task Callers_take_turns_whatever_they_have_waiting()
    {
        WorkGate gate = new(1, 100);
        Turn running = await gate.EnterAsync("a", default);
        List<string> served = [];
        List<Task> all = [];
        foreach (string caller in (string[])["a", "a", "a", "b", "b", "c"])
        {
            all.Add(ServeAsync(gate, caller, served));
        }

        running.Dispose();
        await Task.WhenAll(all);

        Assert.Equal(["a", "b", "c", "a", "b", "a"], served);
    }

    [Fact]
    public async Task A_full_gate_refuses_with_the_time_to_come_again()
    {
        WorkGate gate = new(1, 2);
        using Turn running = await gate.EnterAsync("a", default);
        Task<Turn> waiting = gate.EnterAsync("b", default);

        GateFullException full = await Assert.ThrowsAsync<GateFullException>(() => gate.EnterAsync("c", default));

        Assert.InRange(full.RetryAfter, TimeSpan.FromMilliseconds(50), TimeSpan.FromSeconds(5));
        Assert.False(waiting.IsCompleted);
    }

    [Fact]
    public async Task At_a_full_gate_the_newest_of_the_longest_line_gives_way_to_another_caller()
    {
        WorkGate gate = new(1, 4);
        using Turn running = await gate.EnterAsync("library", default);
        Task<Turn>[] library = [.. Enumerable.Range(0, 3).Select(_ => gate.EnterAsync("library", default))];

        Task<Turn> single = gate.EnterAsync("single", default);

        await Assert.ThrowsAsync<GateFullException>(() => library[2]);
        Assert.False(single.IsCompleted);
        Assert.Equal((1, 3), (gate.Running, gate.Waiting));
        await Assert.ThrowsAsync<GateFullException>(() => gate.EnterAsync("library", default));
    }

    [Fact]
    public async Task A_caller_who_hangs_up_while_waiting_frees_his_place_at_once()
    {
        WorkGate gate = new(1, 2);
        using Turn running = await gate.EnterAsync("a", default);
        using CancellationTokenSource hangUp = new();
        Task<Turn> waiting = gate.EnterAsync("b", hangUp.Token);

        await hangUp.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => waiting);
        Assert.Equal(0, gate.Waiting);
        Assert.False(gate.EnterAsync("c", default).IsFaulted);
    }

    [Fact]
    public async Task A_turn_that_is_ended_twice_frees_one_place()
    {
        WorkGate gate = new(1, 1);
        Turn turn = await gate.EnterAsync("a", default);
        turn.Dispose();
        turn.Dispose();

        Assert.Equal(0, gate.Running);
    }

    [Fact]
    public async Task Never_more_than_allowed_runs_and_nobody_is_forgotten() =>
        await Gen.Select(Gen.Int[1, 4], Gen.Int[0, 20], Gen.Int[0, 3].Array[0, 200])
            .SampleAsync(async drawn =>
            {
                (int parallel, int room, int[] callers) = drawn;
                WorkGate gate = new(parallel, parallel + room);
                Crowd crowd = new(gate);

                await Task.WhenAll(callers.Select(crowd.ComeAsync));

                Assert.InRange(crowd.MostAtOnce, 0, parallel);
                Assert.Equal(callers.Length, crowd.Served + crowd.Refused);
                Assert.Equal((0, 0), (gate.Running, gate.Waiting));
            });

    /// <summary>Callers who all come at once; number 3 hangs up as soon as he has come.</summary>
    private sealed class Crowd(WorkGate gate)
    {
        private const int HangsUp = 3;
        private readonly Lock _lock = new();
        private int _running;

        public int MostAtOnce { get; private set; }

        public int Served { get; private set; }

        public int Refused { get; private set; }

        public async Task ComeAsync(int caller)
        {
            using CancellationTokenSource hangUp = new();
            try
            {
                Task<Turn> entering = gate.EnterAsync($"{caller}", hangUp.Token);
                if (caller == HangsUp)
                {
                    await hangUp.CancelAsync();
                }

                using Turn turn = await entering;
                Count(() => MostAtOnce = Math.Max(MostAtOnce, ++_running));
                await Task.Yield();
                Count(() => (_running, Served) = (_running - 1, Served + 1));
            }
            catch (Exception fault) when (fault is GateFullException or OperationCanceledException)
            {
                Count(() => Refused++);
            }
        }

        private void Count(Action change)
        {
            lock (_lock)
            {
                change();
            }
        }
    }

    private static async Task ServeAsync(WorkGate gate, string caller, List<string> served)
    {
        using Turn turn = await gate.EnterAsync(caller, default);
        lock (served)
        {
            served.Add(caller);
        }
    }
}
