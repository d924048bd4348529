namespace Flushback.Service.Queueing;

/// <summary>How callers are told apart. Bound from the configuration section <see cref="Section"/>.</summary>
public sealed class QueueOptions
{
    /// <summary>Name of the configuration section.</summary>
    public const string Section = "Queue";

    /// <summary>Header in which a proxy in front says whose request it passes on.</summary>
    /// <value>Default: none, every connection is a caller. Name one only where the proxy overwrites it.</value>
    public string? CallerHeader { get; set; }
}
