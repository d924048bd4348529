using Flushback.Cli.Regression.Baselines;

namespace Flushback.Cli.Regression.Running;

/// <summary>What became of an item: a snapshot, or why there is none.</summary>
/// <param name="Kept">What is kept of the check; null when it was refused.</param>
/// <param name="Refused">What is wrong, in sentences; empty when it was checked.</param>
internal sealed record Answered(Snapshot? Kept, IReadOnlyList<string> Refused);
