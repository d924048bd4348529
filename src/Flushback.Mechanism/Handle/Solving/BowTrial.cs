using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;

namespace Flushback.Mechanism.Handle.Solving;

/// <summary>The nose at one bow: turned as far down as the tang allows, or as the spring wants.</summary>
/// <remarks>
/// At a given bow the turns without overlap are an interval, known exactly from the bench's closed forms. What is left
/// is the least energy over the bow alone.
/// </remarks>
internal readonly record struct BowTrial
{
    public BowTrial(ElasticNose nose, in NoseBounds bounds, double bowMm)
    {
        Bounds = bounds;
        BowMm = bowMm;
        FloorRate = bounds.IsFloored ? RateOf(bounds.Floor) : 0;
        CeilingRate = bounds.IsCeiled ? RateOf(bounds.Ceiling) : 0;
        IsFree = bounds.Lowest <= bounds.Highest;
        if (!IsFree)
        {
            // No room: go to where the gap opens, whatever the energy.
            Turn = new Angle(bounds.Lowest);
            Rate = FloorRate;
            Slope = -Math.Sign(CeilingRate - FloorRate);
            return;
        }

        Carrier = Carrier.Floor;
        Turn = new Angle(bounds.Lowest);
        Rate = FloorRate;
        if (!bounds.IsFloored || nose.Slopes(Pose).ToTurn < 0)
        {
            Angle free = nose.FreeTurnAt(bowMm);
            Carrier = free.Radians > bounds.Highest ? Carrier.Ceiling : Carrier.None;
            Turn = Carrier == Carrier.Ceiling ? new Angle(bounds.Highest) : free;
            Rate = Carrier == Carrier.Ceiling ? CeilingRate : 0;
        }

        (double toBow, double toTurn) = nose.Slopes(Pose);
        Slope = toBow + (toTurn * Rate);
    }

    public NoseBounds Bounds { get; }

    public double BowMm { get; }

    /// <summary>False when shoulder and tang leave no room for the nose at this bow.</summary>
    public bool IsFree { get; }

    public Angle Turn { get; }

    /// <summary>Which bound the nose lies at.</summary>
    public Carrier Carrier { get; }

    /// <summary>Change of the turn with the bow, radians per millimetre.</summary>
    public double Rate { get; }

    public double FloorRate { get; }

    public double CeilingRate { get; }

    /// <summary>Slope of the energy over the bow, in N; where there is no room only its sign counts.</summary>
    public double Slope { get; }

    public NosePose Pose => new(Turn, BowMm);

    /// <summary>True when both lie on one and the same pair of features, so that the energy is smooth between them.</summary>
    public bool IsSmoothTo(in BowTrial other) =>
        IsFree
        && other.IsFree
        && Carrier == other.Carrier
        && (
            Carrier switch
            {
                Carrier.Floor => IsSame(Bounds.Floor, other.Bounds.Floor),
                Carrier.Ceiling => IsSame(Bounds.Ceiling, other.Bounds.Ceiling),
                _ => true,
            }
        );

    /// <summary>Turn on this trial's line of contact at another bow.</summary>
    public double TurnAt(double bowMm) => Turn.Radians + (Rate * (bowMm - BowMm));

    private static bool IsSame(in SpringPose.Feature a, in SpringPose.Feature b) =>
        a.BladeEdge == b.BladeEdge
        && a.SpringEdge == b.SpringEdge
        && a.BladeVertex == b.BladeVertex
        && a.SpringVertex == b.SpringVertex;

    // The gap along the normal keeps its width: normal's height times the bow plus lever times the turn is nothing.
    private static double RateOf(in SpringPose.Feature feature) => -feature.Normal.Y / feature.SpringLever;
}

/// <summary>What the nose lies against.</summary>
internal enum Carrier
{
    /// <summary>Nothing: it hangs free.</summary>
    None,

    /// <summary>The tang below it.</summary>
    Floor,

    /// <summary>The shoulder over it.</summary>
    Ceiling,
}
