namespace Flushback.Mechanism.Handle.Beams;

/// <summary>The spring as its nose feels it: a symmetric 2 x 2 stiffness.</summary>
/// <param name="ForcePerRise">Force for a rise without tilt, in N/mm.</param>
/// <param name="ForcePerTilt">Force for a tilt without rise, in N; the same as the moment for a rise, in N mm/mm.</param>
/// <param name="MomentPerTilt">Moment for a tilt without rise, in N mm.</param>
public readonly record struct NoseStiffness(double ForcePerRise, double ForcePerTilt, double MomentPerTilt)
{
    /// <summary>Load that holds the nose away from where it would lie free.</summary>
    public NoseLoad LoadAt(NosePosition away) =>
        new(
            (ForcePerRise * away.RiseMm) + (ForcePerTilt * away.Tilt),
            (ForcePerTilt * away.RiseMm) + (MomentPerTilt * away.Tilt)
        );

    /// <summary>Energy stored by holding the nose away from where it would lie free, in N mm (millijoules).</summary>
    public double EnergyAt(NosePosition away)
    {
        NoseLoad load = LoadAt(away);
        return ((load.ForceN * away.RiseMm) + (load.MomentNmm * away.Tilt)) / 2;
    }
}

/// <summary>Where the nose is, or how far from somewhere else.</summary>
/// <param name="RiseMm">Rise of the place where the stiff nose begins, at the height of the centre pin, towards +y.</param>
/// <param name="Tilt">Tilt in radians, counter-clockwise: positive as the front rises.</param>
public readonly record struct NosePosition(double RiseMm, double Tilt)
{
    /// <summary>How far the first is from the second.</summary>
    public static NosePosition operator -(NosePosition a, NosePosition b) => new(a.RiseMm - b.RiseMm, a.Tilt - b.Tilt);
}

/// <summary>What the tang does to the nose, taken together at the place where the stiff nose begins.</summary>
/// <param name="ForceN">Force towards +y, in newtons.</param>
/// <param name="MomentNmm">Moment counter-clockwise, in newton millimetres.</param>
public readonly record struct NoseLoad(double ForceN, double MomentNmm);
