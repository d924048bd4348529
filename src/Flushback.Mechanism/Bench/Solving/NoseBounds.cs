using Flushback.Geometry;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>How far the nose may turn about the (raised) centre pin between the tang below it and a shoulder over it.</summary>
internal readonly record struct NoseBounds
{
    public NoseBounds(in Touch floor, in Touch ceiling, Point pin)
    {
        IsFloored = double.IsFinite(floor.Rotation);
        IsCeiled = double.IsFinite(ceiling.Rotation);
        Lowest = floor.Rotation;
        Highest = ceiling.Rotation;
        Floor = IsFloored ? new SpringPose.Feature(floor, pin) : default;
        Ceiling = IsCeiled ? new SpringPose.Feature(ceiling, pin) : default;
    }

    /// <summary>True when there is tang below the nose at all.</summary>
    public bool IsFloored { get; }

    /// <summary>True when a shoulder overhangs the nose.</summary>
    public bool IsCeiled { get; }

    /// <summary>Least turn, in radians.</summary>
    public double Lowest { get; }

    /// <summary>Most turn, in radians.</summary>
    public double Highest { get; }

    /// <summary>What carries the nose at its least turn.</summary>
    public SpringPose.Feature Floor { get; }

    /// <summary>What holds it down at its most.</summary>
    public SpringPose.Feature Ceiling { get; }
}
