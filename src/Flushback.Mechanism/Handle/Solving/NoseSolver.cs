using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;

namespace Flushback.Mechanism.Handle.Solving;

/// <summary>
/// The elastic spring on the tang: at each blade angle the pose of least energy without overlap, with the contact forces
/// as multipliers.
/// </summary>
/// <remarks>
/// A convex quadratic programme in two unknowns, bow and turn, over the exact lines and arcs. At each bow the least turn
/// is the largest of closed forms, and its rate of change is known from the touching pair; so the slope of the energy
/// over the bow is exact, and its zero is found by Newton's rule within a bracket. Where the slope jumps through zero two
/// pairs touch at once: the bow is then where their lines of contact cross. Allocates nothing; not for two threads at once.
/// </remarks>
public sealed class NoseSolver
{
    private const int MostRounds = 90;

    // Every so many rounds the bracket must have halved, or it is halved: a kink may be met from one side for ever.
    private const int RoundsToHalve = 5;

    // A spring bowed more than this is no backspring any more.
    private const double MostBowMm = 6;

    // Bows closer than this are one: a few rounding errors of the closed forms.
    private const double SameBowMm = 2e-13;

    // How far on either side of a kink its two pairs are looked at: far over rounding, and moves a force by a millionth.
    private const double AsideMm = 2e-9;

    // A corner that rolls on a hollow of nearly its own radius swings its normal within what a bow is known to.
    private const double MostImbalance = 1e-3;

    private readonly BenchSolver _bench;

    /// <summary>Makes a knife with an elastic spring ready to be swept.</summary>
    public NoseSolver(BenchSolver bench, ElasticNose nose)
    {
        _bench = bench;
        Nose = nose;
    }

    /// <summary>The spring.</summary>
    public ElasticNose Nose { get; }

    /// <summary>The knife being solved.</summary>
    public Knives.Knife Knife => _bench.Knife;

    /// <summary>The state at a blade angle, followed from where the nose lies at a neighbouring one.</summary>
    public NoseState At(Angle bladeAngle, NosePose near)
    {
        BowBracket bracket = new(Nose);
        BowTrial trial = Try(bladeAngle, near.BowMm, near.Turn);
        double wide = double.PositiveInfinity;
        for (int round = 1; round <= MostRounds && Math.Abs(trial.BowMm) < MostBowMm; round++)
        {
            bracket.Take(trial);
            double next = bracket.After(trial);
            if (trial.IsFree && Math.Abs(trial.Slope) <= SameBowMm * Nose.CurvatureAlong(trial.Rate))
            {
                return Level(bladeAngle, trial);
            }

            if (Math.Abs(next - trial.BowMm) <= SameBowMm || bracket.WidthMm <= SameBowMm)
            {
                BowTrial before = Beside(bladeAngle, trial, -AsideMm);
                BowTrial after = Beside(bladeAngle, trial, AsideMm);
                if (before.Slope < 0 && after.Slope >= 0)
                {
                    return Kink(bladeAngle, before, after);
                }

                bracket.Take(before);
                bracket.Take(after);
                next = bracket.IsClosed ? bracket.MiddleMm : trial.BowMm - (Math.Sign(trial.Slope) * 1e3 * AsideMm);
            }
            else if (round % RoundsToHalve == 0 && bracket.IsClosed)
            {
                next = bracket.WidthMm > wide / 2 ? bracket.MiddleMm : next;
                wide = bracket.WidthMm;
            }

            trial = Try(bladeAngle, next, new Angle(trial.TurnAt(next)));
        }

        return new NoseState(bladeAngle, false, trial.Pose, 0, default, 0, default, default);
    }

    private BowTrial Try(Angle bladeAngle, double bowMm, Angle near) =>
        new(Nose, _bench.NoseBoundsAt(bladeAngle, near, bowMm), bowMm);

    private BowTrial Beside(Angle bladeAngle, in BowTrial trial, double byMm) =>
        Try(bladeAngle, trial.BowMm + byMm, new Angle(trial.TurnAt(trial.BowMm + byMm)));

    /// <summary>The energy is level: one contact, or none.</summary>
    private NoseState Level(Angle bladeAngle, in BowTrial trial)
    {
        (_, double toTurn) = Nose.Slopes(trial.Pose);
        NoseContact contact = trial.Carrier switch
        {
            Carrier.Floor => new(trial.Bounds.Floor, toTurn / trial.Bounds.Floor.SpringLever),
            Carrier.Ceiling => new(trial.Bounds.Ceiling, toTurn / trial.Bounds.Ceiling.SpringLever),
            _ => default,
        };
        return State(bladeAngle, trial.Pose, trial.Carrier == Carrier.None ? 0 : 1, contact, default);
    }

    /// <summary>The energy rises to both sides: two contacts share the load.</summary>
    private NoseState Kink(Angle bladeAngle, in BowTrial before, in BowTrial after)
    {
        BowTrial free = before.IsFree ? before : after;
        BowTrial other = before.IsFree ? after : before;
        if (!free.IsFree)
        {
            return new NoseState(bladeAngle, false, free.Pose, 0, default, 0, default, default);
        }

        if (free.Carrier == Carrier.None || (other.IsFree && other.Carrier == Carrier.None))
        {
            return Level(bladeAngle, free.Carrier == Carrier.None && other.IsFree ? other : free);
        }

        // Without room on the other side, tang and shoulder both bear; that side knows both.
        SpringPose.Feature first = free.Carrier == Carrier.Ceiling ? free.Bounds.Ceiling : free.Bounds.Floor;
        SpringPose.Feature second =
            !other.IsFree && free.Carrier == Carrier.Floor ? other.Bounds.Ceiling
            : !other.IsFree || other.Carrier == Carrier.Floor ? other.Bounds.Floor
            : other.Bounds.Ceiling;
        double bow = (before.BowMm + after.BowMm) / 2;
        NosePose pose = new(new Angle(free.TurnAt(bow)), bow);
        (double toBow, double toTurn) = Nose.Slopes(pose);
        double cross = (first.Normal.Y * second.SpringLever) - (second.Normal.Y * first.SpringLever);
        double firstN = ((toBow * second.SpringLever) - (toTurn * second.Normal.Y)) / cross;
        double secondN = ((toTurn * first.Normal.Y) - (toBow * first.SpringLever)) / cross;

        if (firstN >= 0 && secondN >= 0)
        {
            return State(bladeAngle, pose, 2, new NoseContact(first, firstN), new NoseContact(second, secondN));
        }

        // One place seen as two, where an arc runs on into a line: there is nothing to share. If that leaves the nose out of
        // balance, the blade bears where the spring is no nose any more, at the centre pin: no pose of this model.
        BowTrial level = other.IsFree && Math.Abs(other.Slope) < Math.Abs(free.Slope) ? other : free;
        NoseState single = Level(bladeAngle, level);
        return single with { IsPossible = Math.Abs(level.Slope) <= MostImbalance * single.GreatestForceN };
    }

    private NoseState State(Angle bladeAngle, NosePose pose, int count, NoseContact first, NoseContact second) =>
        new(bladeAngle, true, pose, Nose.EnergyAt(pose), Nose.LoadAt(pose), count, first, second);
}
