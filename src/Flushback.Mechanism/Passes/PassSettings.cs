namespace Flushback.Mechanism.Passes;

/// <summary>What has to be left when metal is taken off. Immutable; every default is stated and ours.</summary>
public sealed record PassSettings
{
    /// <summary>The values below, each as given there.</summary>
    public static PassSettings Default { get; } = new();

    /// <summary>Least metal left around a pin's hole; a pass that comes nearer is refused, unless it was nearer already.</summary>
    /// <value>Default: 0.8 mm.</value>
    public double LeastPinWallMm { get; init; } = 0.8;

    /// <summary>Least length left of a face a pass shortens.</summary>
    /// <value>Default: 0.5 mm.</value>
    public double LeastFaceMm { get; init; } = 0.5;
}
