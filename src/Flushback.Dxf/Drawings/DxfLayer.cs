namespace Flushback.Dxf.Drawings;

/// <summary>A layer of a drawing, from its table or first used by an entity.</summary>
/// <param name="Name">The name as the file spells it; names are compared without regard to case.</param>
/// <param name="IsOn">False when the layer is switched off.</param>
/// <param name="IsFrozen">True when the layer is frozen.</param>
public sealed record DxfLayer(string Name, bool IsOn = true, bool IsFrozen = false)
{
    /// <summary>True when what lies on the layer is seen; what is not seen is not read.</summary>
    public bool IsVisible => IsOn && !IsFrozen;
}
