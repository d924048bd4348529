namespace Flushback.Mechanism.Knives;

/// <summary>A part of the knife that comes as an outline.</summary>
public enum Part
{
    /// <summary>The blade with its tang.</summary>
    Blade,

    /// <summary>The backspring.</summary>
    Spring,

    /// <summary>The handle as seen from the side.</summary>
    Handle,
}
