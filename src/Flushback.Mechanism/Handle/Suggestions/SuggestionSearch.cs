using Flushback.Geometry;
using MathNet.Numerics.RootFinding;

namespace Flushback.Mechanism.Handle.Suggestions;

/// <summary>Looks for the least change of one dimension that gives a wanted pull under a stress limit.</summary>
/// <remarks>
/// A spring gets stiffer with each of the dimensions, so the change is looked for where the pull should come nearer to the
/// wanted one; before it is said that there is none, the whole range has been walked through both ways, and where a step
/// of it passes the wanted pull the place is found by Brent's rule.
/// </remarks>
internal sealed class SuggestionSearch
{
    private const int StepsEachWay = 12;
    private const double SameMm = 1e-7;
    private const double SamePullN = 1e-3;
    private const double SameStressMpa = 0.1;
    private const int Rounds = 60;

    private readonly VariedKnife _knife;
    private readonly VariedRange _range;
    private readonly Angle _step;
    private readonly double _pullN;
    private readonly double _mostStressMpa;
    private readonly List<Trial> _tried = [];
    private Trial? _overStress;

    private SuggestionSearch(
        HandleModel model,
        double pullN,
        double mostStressMpa,
        Angle step,
        CancellationToken cancellation
    )
    {
        _knife = new VariedKnife(model, cancellation);
        _range = VariedRange.On(model, model.Settings.Varied);
        _step = step;
        _pullN = pullN;
        _mostStressMpa = mostStressMpa;
    }

    /// <summary>The suggestion a knife's settings ask for; null when they ask for none.</summary>
    /// <param name="model">The knife as it is.</param>
    /// <param name="step">Step of the blade angle at which pull and stress are read.</param>
    /// <param name="cancellation">Looked at once a blade angle.</param>
    public static Suggestion? For(HandleModel model, Angle step, CancellationToken cancellation)
    {
        HandleSettings settings = model.Settings;
        if (settings.WantedPullN is not { } pull)
        {
            return null;
        }

        double? borne = SpringStrength.RestShare * settings.SpringSteel.TensileAt(settings.SpringHardnessHrc)?.Low;
        double most = settings.MostStressMpa ?? borne ?? double.PositiveInfinity;
        return new SuggestionSearch(model, pull, most, step, cancellation).Run();
    }

    private Suggestion Run()
    {
        // The knife as it is turns: it has been swept before anything is suggested.
        Trial present = At(0)!.Value;
        _tried.Add(present);
        bool isUp = present.PullN < _pullN;
        return Walk(present, isUp) ?? Walk(present, !isUp) ?? None();
    }

    /// <summary>Steps away from the present value; what gives the pull within the stress, or null at the end of the range.</summary>
    private Suggestion? Walk(Trial from, bool isUp)
    {
        double end = isUp ? _range.MostMm : _range.LeastMm;
        Trial last = from;
        for (int i = 1; i <= StepsEachWay && At(end * i / StepsEachWay) is { } next; i++)
        {
            _tried.Add(next);
            if (
                (last.PullN <= _pullN) != (next.PullN <= _pullN)
                && Where(last, next, t => t.PullN - _pullN) is { } found
            )
            {
                if (Math.Abs(found.PullN - _pullN) <= SamePullN && found.StressMpa <= _mostStressMpa)
                {
                    return SuggestionWording.Found(_range, found);
                }

                _overStress ??= found.StressMpa > _mostStressMpa ? found : null;
            }

            last = next;
        }

        return null;
    }

    private Suggestion None()
    {
        _tried.Sort(static (a, b) => a.ByMm.CompareTo(b.ByMm));
        SuggestionWording wording = new(_range, _tried[0].ByMm, _tried[^1].ByMm, _pullN, _mostStressMpa);
        return Nearest() is not { } nearest ? wording.AllOverStress(_tried.MinBy(trial => trial.StressMpa))
            : _overStress is { } over ? wording.OverStress(over, nearest)
            : wording.OutOfReach(nearest);
    }

    /// <summary>Of what bears the stress the one nearest to the wanted pull, up to where the stress is just borne.</summary>
    private Trial? Nearest()
    {
        Trial? nearest = null;
        for (int i = 0; i < _tried.Count; i++)
        {
            Offer(_tried[i]);
            if (i > 0 && IsBorne(_tried[i - 1]) != IsBorne(_tried[i]))
            {
                Offer(Where(_tried[i - 1], _tried[i], trial => trial.StressMpa - _mostStressMpa));
            }
        }

        return nearest;

        void Offer(Trial? trial)
        {
            bool isNearer =
                trial is { } offered
                && offered.StressMpa <= _mostStressMpa + SameStressMpa
                && (nearest is not { } best || Math.Abs(offered.PullN - _pullN) < Math.Abs(best.PullN - _pullN));
            nearest = isNearer ? trial : nearest;
        }
    }

    private bool IsBorne(Trial trial) => trial.StressMpa <= _mostStressMpa;

    /// <summary>Where between two trials something passes zero; null where the knife does not turn in between.</summary>
    private Trial? Where(Trial from, Trial to, Func<Trial, double> what)
    {
        (double low, double high) = (Math.Min(from.ByMm, to.ByMm), Math.Max(from.ByMm, to.ByMm));
        double ValueAt(double byMm) => At(byMm) is { } trial ? what(trial) : double.NaN;
        return Brent.TryFindRoot(ValueAt, low, high, SameMm, Rounds, out double root) ? At(root) : null;
    }

    /// <summary>The knife with a change; null when it leaves too little metal, or no blade that turns.</summary>
    private Trial? At(double byMm)
    {
        HandleModel model = _knife.With(_range.Of, byMm);
        if (model.Beam.LeastMetalMm < _range.LeastMetalMm - SameMm || !model.CanTurn)
        {
            return null;
        }

        HandleSweep sweep = new(model, _step);
        return new Trial(byMm, sweep.Pull.PullN, sweep.PeakStressMpa);
    }
}
