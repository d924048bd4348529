namespace Flushback.Mechanism.Handle.Solving;

/// <summary>Two bows between which the energy is least, and a proposal for the next one to try.</summary>
internal struct BowBracket(ElasticNose nose)
{
    // Far more than any spring bows from one blade angle to the next; keeps a first Newton step from leaping.
    private const double LongestStepMm = 0.25;

    private BowTrial _falls;
    private BowTrial _rises;
    private BowTrial _last;
    private BowTrial _beforeLast;
    private int _count;
    private bool _hasFalls;
    private bool _hasRises;

    /// <summary>True when the energy falls towards the inside from both ends.</summary>
    public readonly bool IsClosed => _hasFalls && _hasRises;

    /// <summary>Distance between the ends; infinite while one is missing.</summary>
    public readonly double WidthMm => IsClosed ? Math.Abs(_rises.BowMm - _falls.BowMm) : double.PositiveInfinity;

    public readonly double MiddleMm => (_falls.BowMm + _rises.BowMm) / 2;

    public void Take(in BowTrial trial)
    {
        (_beforeLast, _last) = (_last, trial);
        _count++;
        if (trial.Slope < 0)
        {
            (_falls, _hasFalls) = (trial, true);
        }
        else
        {
            (_rises, _hasRises) = (trial, true);
        }
    }

    /// <summary>The next bow to try after the last one.</summary>
    public readonly double After(in BowTrial last)
    {
        double own = Own(last);
        if (!IsClosed)
        {
            return own;
        }

        if (!last.IsFree || _falls.IsSmoothTo(_rises))
        {
            return Holds(own) ? own : MiddleMm;
        }

        // Beyond the place where the two ends' lines cross, the other pair of features takes over.
        double crossing = Crossing();
        bool isBefore = Math.Abs(own - last.BowMm) < Math.Abs(crossing - last.BowMm);
        double next = Holds(own) && (isBefore || !Holds(crossing)) ? own : crossing;
        return Holds(next) ? next : MiddleMm;
    }

    /// <summary>Newton's rule from a trial, or where room for the nose opens.</summary>
    private readonly double Own(in BowTrial trial)
    {
        double step = trial.IsFree
            ? -trial.Slope / Curvature(trial)
            : (trial.Bounds.Lowest - trial.Bounds.Highest) / (trial.CeilingRate - trial.FloorRate);
        return trial.BowMm + Math.Clamp(step, -LongestStepMm, LongestStepMm);
    }

    /// <summary>Second derivative of the energy: by the last two slopes on one smooth stretch, else as on a straight line.</summary>
    private readonly double Curvature(in BowTrial trial)
    {
        double straight = nose.CurvatureAlong(trial.Rate);
        if (_count < 2 || trial.BowMm != _last.BowMm || !_last.IsSmoothTo(_beforeLast))
        {
            return straight;
        }

        // The line of contact is curved itself where a corner rides on an arc. Rounding rules between near neighbours.
        double apart = _last.BowMm - _beforeLast.BowMm;
        double secant = (_last.Slope - _beforeLast.Slope) / apart;
        return Math.Abs(apart) > 1e-7 && secant > straight / 4 && secant < straight * 4 ? secant : straight;
    }

    /// <summary>Where the ends' two lines of contact cross, or where the end without room gets it.</summary>
    private readonly double Crossing()
    {
        if (_falls.IsFree && _rises.IsFree)
        {
            double apart = _rises.TurnAt(_falls.BowMm) - _falls.Turn.Radians;
            return _falls.BowMm + (apart / (_falls.Rate - _rises.Rate));
        }

        return Own(_falls.IsFree ? _rises : _falls);
    }

    private readonly bool Holds(double bowMm) =>
        bowMm >= Math.Min(_falls.BowMm, _rises.BowMm) && bowMm <= Math.Max(_falls.BowMm, _rises.BowMm);
}
