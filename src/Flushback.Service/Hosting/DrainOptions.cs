using System.ComponentModel.DataAnnotations;

namespace Flushback.Service.Hosting;

/// <summary>How the service ends. Bound from the configuration section <see cref="Section"/>.</summary>
public sealed class DrainOptions
{
    /// <summary>Name of the configuration section.</summary>
    public const string Section = "Drain";

    /// <summary>Seconds between saying "not ready" and taking no more calls, for balancers to notice.</summary>
    /// <value>Default: 0.</value>
    [Range(0, 600)]
    public double NoticeSeconds { get; set; }

    /// <summary>Seconds that calls under way then have to end before they are cut off.</summary>
    /// <value>Default: 30.</value>
    [Range(0, 3600)]
    public double FinishSeconds { get; set; } = 30;
}
