using Flushback.Geometry;

namespace Flushback.Mechanism.Passes;

/// <summary>One act of taking metal off. Depths and radii in millimetres, never negative.</summary>
public abstract record Pass
{
    private protected Pass() { }

    /// <summary>The face or corner it works on.</summary>
    public abstract Site Site { get; }
}

/// <summary>Takes a face down.</summary>
/// <remarks>
/// A depth counts at a contact of the stop the face serves, along the contact's normal, with the blade resting at that
/// stop. Front is the contact towards the blade as opened (+x of the knife frame), rear the one towards the handle (-x),
/// as the contacts of a report are listed: on the half-stop face the front is the open corner, on the closed face the
/// closed corner, with the kick at the rear. <see cref="DepthPlaces"/> says what is meant where a face has one contact
/// or none. What passes through the two points so found is cut from end to end of the face, and beyond until the outline
/// falls away; in the notch the neighbour is prolonged to meet it.
/// </remarks>
public abstract record SlicePass : Pass
{
    private protected SlicePass() { }

    /// <summary>Depth at the front contact.</summary>
    public required double FrontDepthMm { get; init; }

    /// <summary>Depth at the rear contact.</summary>
    public required double RearDepthMm { get; init; }
}

/// <summary>Takes a face down flat, as on a stone.</summary>
/// <param name="Face">Open flat, shoulder, half-stop face, closed face; underside or end face.</param>
public sealed record FlatSlice(Site Face) : SlicePass
{
    /// <inheritdoc/>
    public override Site Site => Face;
}

/// <summary>Takes a face down with a round wheel, which leaves it hollow between the two depths.</summary>
/// <param name="Face">As for <see cref="FlatSlice"/>.</param>
/// <param name="WheelRadiusMm">Radius of the wheel; at least half the way from one contact to the other.</param>
public sealed record WheelSlice(Site Face, double WheelRadiusMm) : SlicePass
{
    /// <inheritdoc/>
    public override Site Site => Face;
}

/// <summary>Lowers the underside of the spring's nose; the depths count at its foremost and rearmost contact of all stops.</summary>
public sealed record LowerNose : SlicePass
{
    /// <inheritdoc/>
    public override Site Site => Site.On(Knives.SpringFace.Underside);
}

/// <summary>Rounds a corner, so that no radius smaller than this is left there.</summary>
/// <param name="Corner">
/// Open corner, closed corner, kick, the shoulder (its top), the nose corner or the underside (the rear corner of its pad).
/// A round already there counts: it grows.
/// </param>
/// <param name="RadiusMm">Radius of the round.</param>
public sealed record RoundCorner(Site Corner, double RadiusMm) : Pass
{
    /// <inheritdoc/>
    public override Site Site => Corner;
}

/// <summary>Hollows the middle of a face by one arc, so that only its two ends touch.</summary>
/// <param name="Face">Open flat, half-stop face, closed face or underside.</param>
/// <param name="DepthMm">Depth in the middle, under the straight line between the ends of the hollow.</param>
/// <param name="FrontMarginMm">What is left of the face at its front end, along the face.</param>
/// <param name="RearMarginMm">What is left at its rear end.</param>
/// <remarks>
/// The ends of a face are those of the edges that bear its name, without the rounds of its corners; on the underside they
/// are the foremost and the rearmost contact of all stops. Front and rear are those of <see cref="SlicePass"/>.
/// </remarks>
public sealed record ReliefArc(Site Face, double DepthMm, double FrontMarginMm, double RearMarginMm) : Pass
{
    /// <inheritdoc/>
    public override Site Site => Face;
}

/// <summary>Takes the kick down and gives it back the radius it had.</summary>
/// <param name="DepthMm">
/// Depth at the kick's contact. The closed face is led to it by a straight cut from the closed corner's contact, where
/// nothing is taken; a hollow in between stays.
/// </param>
public sealed record DressKick(double DepthMm) : Pass
{
    /// <inheritdoc/>
    public override Site Site => Site.On(Knives.BladeFace.Kick);
}

/// <summary>Gives the spring's end face another angle.</summary>
/// <param name="AngleInMetal">
/// Angle in the metal between the underside at the nose and the end face: 90 degrees is square, less leans back. The face
/// turns about its lower end when it is to lean back further, about its upper end otherwise.
/// </param>
/// <param name="DepthMm">Depth at the end it turns about; 0 leaves that end where it is.</param>
public sealed record DressEndFace(Angle AngleInMetal, double DepthMm = 0) : Pass
{
    /// <inheritdoc/>
    public override Site Site => Site.On(Knives.SpringFace.EndFace);
}

/// <summary>Shortens the tip by a cut square to the line from the pivot to the tip.</summary>
/// <param name="LengthMm">How much nearer to the pivot the blade ends.</param>
/// <param name="IsAllowed">True when the maker asks for it outright; the tip is cut last, in the handle.</param>
public sealed record ShortenTip(double LengthMm, bool IsAllowed) : Pass
{
    /// <inheritdoc/>
    public override Site Site => Site.On(Knives.BladeFace.Spine);
}
