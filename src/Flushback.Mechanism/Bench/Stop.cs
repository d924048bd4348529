namespace Flushback.Mechanism.Bench;

/// <summary>A position in which the blade rests.</summary>
public enum Stop
{
    /// <summary>Blade out: blade angle 0.</summary>
    Open,

    /// <summary>Blade square to the handle: blade angle 90 degrees.</summary>
    HalfStop,

    /// <summary>Blade in: blade angle 180 degrees.</summary>
    Closed,
}
