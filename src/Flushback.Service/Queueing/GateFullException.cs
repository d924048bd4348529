namespace Flushback.Service.Queueing;

/// <summary>There is no room to wait at the <see cref="WorkGate"/>.</summary>
/// <param name="retryAfter">When another try is likely to find room.</param>
public sealed class GateFullException(TimeSpan retryAfter) : Exception("The gate is full.")
{
    /// <summary>When another try is likely to find room.</summary>
    public TimeSpan RetryAfter { get; } = retryAfter;
}
