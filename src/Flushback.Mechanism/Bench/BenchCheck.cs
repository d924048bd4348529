using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Bench;

/// <summary>Reads the dial: the whole bench check of one knife.</summary>
public static class BenchCheck
{
    /// <summary>Turns the blade through its rotation and reports what the bench shows.</summary>
    /// <param name="placement">The knife in its frame, from <see cref="KnifePlacement"/>.</param>
    /// <param name="settings">Targets, tolerances and resolution.</param>
    /// <param name="cancellation">Looked at once a blade angle.</param>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static BenchReport Run(
        Placement placement,
        BenchSettings settings,
        CancellationToken cancellation = default
    ) => throw new NotImplementedException();
}
