namespace Flushback.Service.Queueing;

/// <summary>One piece of work in a line.</summary>
internal sealed class Waiter(string caller)
{
    // The next turn is handed over under the gate's lock, where nobody else's code may run.
    private readonly TaskCompletionSource<Turn> _turn = new(TaskCreationOptions.RunContinuationsAsynchronously);

    public string Caller { get; } = caller;

    public Task<Turn> Turn => _turn.Task;

    public void Admit(Turn turn) => _turn.SetResult(turn);

    public void Refuse(GateFullException reason) => _turn.SetException(reason);

    public void Cancel() => _turn.SetCanceled();
}
