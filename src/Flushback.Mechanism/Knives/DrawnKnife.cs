using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Mechanism.Knives;

/// <summary>A blade and its spring as the maker drew them: any position, orientation or mirroring, in millimetres.</summary>
public sealed record DrawnKnife
{
    /// <summary>The blade with its tang, in either direction of travel.</summary>
    public required Outline Blade { get; init; }

    /// <summary>The backspring, in either direction of travel.</summary>
    public required Outline Spring { get; init; }

    /// <summary>The blade pin.</summary>
    public required Circle Pivot { get; init; }

    /// <summary>The pin the spring rocks on, on the bench.</summary>
    public required Circle CentrePin { get; init; }

    /// <summary>The pin at the rear end of the spring; not used on the bench.</summary>
    public Circle? RearPin { get; init; }

    /// <summary>The handle as seen from the side; without it there is no tip depth.</summary>
    public Outline? Handle { get; init; }

    /// <summary>Blade angle at which the blade is drawn; null to find it from where the tip points.</summary>
    public Angle? DrawnBladeAngle { get; init; }

    /// <summary>Where the dial stands; null for the point of the back straight above the pivot.</summary>
    public Point? DialPoint { get; init; }

    /// <summary>Direction of the handle from the centre pin towards the blade; null for along the back at the dial.</summary>
    public Angle? HandleAxis { get; init; }

    /// <summary>Whether the tang is made to stop at 90 degrees; null to find it from the lift.</summary>
    public bool? HasHalfStop { get; init; }

    /// <summary>Faces the maker names; the rest are found from the geometry.</summary>
    public ImmutableArray<FaceOverride> FaceOverrides { get; init; } = [];
}

/// <summary>A face named by the maker: the edge nearest to a point.</summary>
/// <param name="Near">A point on or next to the edge, in the drawing.</param>
/// <param name="BladeFace">What the edge is, when it is the blade's.</param>
/// <param name="SpringFace">What the edge is, when it is the spring's.</param>
public readonly record struct FaceOverride(Point Near, BladeFace? BladeFace, SpringFace? SpringFace);
