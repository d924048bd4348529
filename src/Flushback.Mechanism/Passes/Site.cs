using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes;

/// <summary>A named face or corner of the tang or of the spring: where a pass works.</summary>
/// <remarks><c>default</c> is an unnamed place of the blade.</remarks>
public readonly record struct Site
{
    private Site(BladeFace? blade, SpringFace? spring) => (Blade, Spring) = (blade, spring);

    /// <summary>The face of the blade; null when the site is on the spring.</summary>
    public BladeFace? Blade { get; }

    /// <summary>The face of the spring; null when the site is on the blade.</summary>
    public SpringFace? Spring { get; }

    /// <summary>Which part it is on.</summary>
    public Part Part => Spring is null ? Part.Blade : Part.Spring;

    /// <summary>The trade's word for it, in lower case and without an article.</summary>
    public string Name => Spring is { } spring ? FaceNames.Of(spring) : FaceNames.Of(Blade ?? BladeFace.Unknown);

    /// <summary>A face or corner of the blade.</summary>
    public static Site On(BladeFace face) => new(face, null);

    /// <summary>A face or corner of the spring.</summary>
    public static Site On(SpringFace face) => new(null, face);

    /// <summary>The trade's word.</summary>
    public override string ToString() => Name;
}
