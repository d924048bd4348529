namespace Flushback.Service.Drawings;

/// <summary>Which layer holds a part of the knife.</summary>
/// <param name="Part">What a maker calls the part, such as "blade".</param>
/// <param name="Layer">Name of the layer, compared without regard to case.</param>
/// <param name="IsNamed">True when the caller names the layer; false for the default.</param>
/// <param name="Field">Path of the field that names another layer.</param>
internal sealed record LayerRole(string Part, string Layer, bool IsNamed, string Field);

/// <summary>The layers of a knife.</summary>
/// <param name="Blade">Holds the blade's outline.</param>
/// <param name="Spring">Holds the spring's outline.</param>
/// <param name="Handle">Holds the handle's outline; may be missing.</param>
/// <param name="Pins">Holds the pin circles that are not on the parts' own layers; may be missing.</param>
internal sealed record LayerRoles(LayerRole Blade, LayerRole Spring, LayerRole Handle, LayerRole Pins)
{
    /// <summary>From the contract; an empty name takes the default.</summary>
    public static LayerRoles From(Wire.LayerRoles? named) =>
        new(
            Role("blade", named?.Blade, "BLADE"),
            Role("spring", named?.Spring, "SPRING"),
            Role("handle", named?.Handle, "HANDLE"),
            Role("pins", named?.Pins, "PINS")
        );

    private static LayerRole Role(string part, string? named, string otherwise)
    {
        bool isNamed = !string.IsNullOrEmpty(named);
        return new LayerRole(part, isNamed ? named! : otherwise, isNamed, $"knife.drawing.layers.{part}");
    }
}
