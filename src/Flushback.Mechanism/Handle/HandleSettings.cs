using Flushback.Mechanism.Materials;

namespace Flushback.Mechanism.Handle;

/// <summary>How the preload is given.</summary>
public enum PreloadKind
{
    /// <summary>How far the nose would sink over the pivot from where it lies open, were the tang not there.</summary>
    Sink,

    /// <summary>How far the rear pin holds the spring up from where it would lie with the nose on the open tang, unbent.</summary>
    RearPinShift,

    /// <summary>The spring is drawn in its free shape, both pins in place: its nose overlaps the tang by the preload.</summary>
    DrawnFree,
}

/// <summary>Spring, steel and friction of a check in the handle. Immutable; every default is stated.</summary>
public sealed record HandleSettings
{
    /// <summary>Width of the spring, square to the outline, in millimetres.</summary>
    /// <value>Default: 2.4 mm, a spring of 3/32 in (common practice, no source).</value>
    public double WidthMm { get; init; } = 2.4;

    /// <summary>How the preload is given.</summary>
    /// <value>Default: as the sink of the nose.</value>
    public PreloadKind PreloadKind { get; init; } = PreloadKind.Sink;

    /// <summary>Preload or shift of the rear pin, in millimetres; not used where the spring is drawn free.</summary>
    /// <value>Default: 0.5 mm.</value>
    public double PreloadMm { get; init; } = 0.5;

    /// <summary>Steel of the spring.</summary>
    /// <value>Default: 1095.</value>
    public Steel SpringSteel { get; init; } = Steels.DefaultSpring;

    /// <summary>Hardness of the spring, in HRC.</summary>
    /// <value>Default: 44.</value>
    public double SpringHardnessHrc { get; init; } = 44;

    /// <summary>Hardness of the blade, in HRC.</summary>
    /// <value>Default: 58.</value>
    public double BladeHardnessHrc { get; init; } = 58;

    /// <summary>The part that yields first where blade and spring press on each other: <c>spring</c> or <c>blade</c>.</summary>
    public string SofterPart => SpringHardnessHrc <= BladeHardnessHrc ? "spring" : "blade";

    /// <summary>Coefficient of friction, at the contacts and on the pivot pin.</summary>
    /// <value>
    /// Default: 0.15, lubricated steel on steel: between 0.23 at rest and 0.10 sliding, of hard steel on hard steel with a film
    /// of light oil (Kirk-Othmer, Encyclopedia of Chemical Technology, read as quoted).
    /// </value>
    public double Friction { get; init; } = 0.15;

    /// <summary>Distance of the nail nick from the pivot, in millimetres; null for 0.6 of the way to the tip.</summary>
    /// <value>Default: null; the share is common practice, no source.</value>
    public double? NailNickMm { get; init; }

    /// <summary>How far behind the pivot the stiff nose begins, in millimetres; null for as far as the tang reaches.</summary>
    /// <value>Default: null, the rearmost place of the spring that the tang bears on through the rotation.</value>
    public double? StiffNoseMm { get; init; }

    /// <summary>A pull at the nail nick that is wanted, in newtons; null to look for none.</summary>
    /// <value>Default: null.</value>
    public double? WantedPullN { get; init; }

    /// <summary>What is varied for the wanted pull, everything else as it is.</summary>
    /// <value>Default: the preload. The stiff nose can not be varied: it is an assumption.</value>
    public Dimension Varied { get; init; } = Dimension.Preload;

    /// <summary>Bending stress not to be passed with that pull, in MPa; null for what the steel bears at rest.</summary>
    /// <value>Default: null, 0.75 of the lower tensile strength.</value>
    public double? MostStressMpa { get; init; }
}
