using System.Collections.Immutable;

namespace Flushback.Patterns.Fitting;

/// <summary>Looks for the least change with which everything wanted is there.</summary>
/// <remarks>
/// Every trial adds demands made straight about it; the next trial is the least change that meets them all, as far from the
/// last as straight demands have proved to reach (sequential programming with a trust region). What is only known to be wrong
/// is approached from outside, through planes along which single levers take it away.
/// </remarks>
internal sealed class FitSearch
{
    private const int MostRounds = 50;
    private const double Still = 3e-5;
    private const double SamePullShare = 5e-4;
    private const double FirstReach = 0.15;
    private const double LeastReach = 1e-4;
    private const int ShareHalvings = 20;
    private const int MostDrawn = 3000;

    // A change of the pull by less than this share proves nothing about how straight it goes.
    private const double LeastMoved = 0.01;

    // Far above what a percent of pull or of a limit can cost in changes.
    private const double Penalty = 50;

    // What stands in the way is told for a pull nearer by so much of what is missing.
    private const double Nearer = 0.05;

    private readonly FitSettings _settings;
    private readonly FitTrials _trials;
    private readonly LeverSet _levers;
    private readonly FitModel _model;
    private double _reach = FirstReach;
    private double _badness = double.PositiveInfinity;
    private FitTrial? _undrawn;

    public FitSearch(FitSettings settings, FitTrials trials, LeverSet levers)
    {
        (_settings, _trials, _levers) = (settings, trials, levers);
        _model = new FitModel(trials, levers, settings);
    }

    /// <summary>The least change that reaches everything; null when none was found.</summary>
    public (FitTrial Trial, double[] Changes)? Reached { get; private set; }

    /// <summary>Of the trials with nothing wrong, the one nearest to the wanted pull; null when there was none.</summary>
    public (FitTrial Trial, double[] Changes)? Nearest { get; private set; }

    /// <summary>The last trial.</summary>
    public FitTrial? Last { get; private set; }

    /// <summary>What stands in the way where not everything is reached: keys of demands, and levers at a limit.</summary>
    public ImmutableArray<string> Against { get; private set; } = [];

    /// <summary>Runs to the end.</summary>
    public void Run()
    {
        double[] at = new double[_levers.Count];
        for (int round = 0; round < MostRounds && _reach > LeastReach && _trials.Drawn < MostDrawn; round++)
        {
            FitTrial trial = _trials.At(_levers.With(at));
            if (_levers.BringInFor(trial.Wrong))
            {
                Array.Resize(ref at, _levers.Count);
                trial = _trials.At(_levers.With(at));
            }

            _undrawn ??= trial.IsTold ? null : trial;
            Keep(trial, at);
            Take(trial, at);
            double[] next = Step(at);
            if (Farthest(next, _model.Told ?? at) < Still)
            {
                break;
            }

            at = next;
        }

        if (Reached is null)
        {
            Against = Contradicting();
        }
    }

    /// <summary>Goes on from a trial that is better than the last; from any other, learns what was wrong with it.</summary>
    private void Take(FitTrial trial, double[] at)
    {
        double badness = Badness(trial, at);
        if (trial.IsTold && badness < _badness)
        {
            bool isFirst = _model.Told is null;
            _reach = ReachAfter(trial, at);
            _badness = badness;
            _model.Centre(trial, at);
            if (isFirst && _undrawn is { } given)
            {
                // The way back to the page leads over the edge at a nearer place than the planes seen from the page.
                _model.ForgetWalls();
                _model.Learn(given, new double[_levers.Count]);
            }
        }
        else
        {
            _reach = _model.Told is { } told ? Farthest(at, told) / 2 : _reach;
        }

        _model.Learn(trial, at);
    }

    /// <summary>How far straight demands reach, by how well they foretold the pull.</summary>
    private double ReachAfter(FitTrial trial, double[] at)
    {
        if (_model.Told is not { } told || _settings.WantedPullN is not { } pull)
        {
            return Math.Min(_reach * 2, 1);
        }

        double expected = _model.PullShareWith(at);
        double off = Math.Abs(expected - (trial.PullN / pull));
        double moved = Math.Max(Math.Abs(expected - _model.PullShareWith(told)), LeastMoved);
        return off > 0.3 * moved ? _reach / 2
            : off < 0.1 * moved ? Math.Min(_reach * 2, 1)
            : _reach;
    }

    /// <summary>The length of the changes, and far more for what is still wrong (exact penalty).</summary>
    private double Badness(FitTrial trial, double[] at)
    {
        double wrong = trial.Wrong.Sum(shortfall => shortfall.Measure ?? 1);
        double off = _settings.WantedPullN is { } pull ? Math.Abs((trial.PullN / pull) - 1) : 0;
        return Length(at) + (Penalty * (wrong + off));
    }

    /// <summary>True when a trial has the wanted pull, or none is wanted.</summary>
    public bool Pulls(FitTrial trial) =>
        _settings.WantedPullN is not { } pull || Math.Abs((trial.PullN / pull) - 1) <= SamePullShare;

    private void Keep(FitTrial trial, double[] at)
    {
        Last = trial;
        if (!trial.IsTold || trial.Wrong.Any())
        {
            return;
        }

        if (Pulls(trial) && (Reached is not { } reached || Length(at) < Length(reached.Changes)))
        {
            Reached = (trial, at);
        }

        if (Nearest is not { } nearest || Off(trial) < Off(nearest.Trial))
        {
            Nearest = (trial, at);
        }
    }

    private double Off(FitTrial trial) => Math.Abs(trial.PullN - (_settings.WantedPullN ?? trial.PullN));

    /// <summary>The next changes to try.</summary>
    private double[] Step(double[] at)
    {
        double[] centre = [.. (_model.Told ?? at), .. new double[_levers.Count - (_model.Told ?? at).Length]];
        double reach = _model.Told is null ? 1 : _reach;
        double[] least = [.. centre.Select((c, i) => Math.Max(_levers[i].Least, c - reach))];
        double[] most = [.. centre.Select((c, i) => Math.Min(_levers[i].Most, c + reach))];

        // As much of the demands as there is a change for within reach, and then as much of the pull.
        Plane[] demands = [.. _model.Demands];
        (double[] next, double met) = Most(share => Least(Partly(share), least, most), centre);
        if (_settings.WantedPullN is null || _model.Told is null)
        {
            return next;
        }

        Plane[] kept = Partly(met);
        double from = _model.PullShareWith(next);
        return Most(share => Least([.. kept, .. Pulling(from + (share * (1 - from)))], least, most), next).Change;

        Plane[] Partly(double share) => [.. demands.Select(demand => demand.Partly(share, centre))];
    }

    /// <summary>The change for the greatest share from 0 to 1 that has one; that of 0 is known.</summary>
    private static (double[] Change, double Share) Most(Func<double, double[]?> changeFor, double[] none)
    {
        if (changeFor(1) is { } whole)
        {
            return (whole, 1);
        }

        (double[] best, double can, double cannot) = (changeFor(0) ?? none, 0, 1);
        for (int i = 0; i < ShareHalvings; i++)
        {
            double middle = (can + cannot) / 2;
            double[]? next = changeFor(middle);
            best = next ?? best;
            (can, cannot) = next is null ? (can, middle) : (middle, cannot);
        }

        return (best, can);
    }

    private IEnumerable<Plane> Pulling(double share)
    {
        Plane atLeast = _model.PullOf(share);
        return [atLeast, atLeast.Reversed];
    }

    private static double[]? Least(Plane[] demands, double[] least, double[] most) =>
        LeastChange.Meeting(demands, least, most).Change;

    /// <summary>Which demands and limits leave no change, or none with a pull nearer to the wanted one than the nearest.</summary>
    private ImmutableArray<string> Contradicting()
    {
        double[] least = [.. Enumerable.Range(0, _levers.Count).Select(i => _levers[i].Least)];
        double[] most = [.. Enumerable.Range(0, _levers.Count).Select(i => _levers[i].Most)];
        Plane[] demands = [.. _model.Demands];
        if (_settings.WantedPullN is not null && _model.Told is not null)
        {
            double share = _model.PullShare + (Nearer * (1 - _model.PullShare));
            demands = [.. demands, .. Pulling(share)];
        }

        (double[]? change, double[] weights) = LeastChange.Meeting(demands, least, most);
        IEnumerable<string> keys = weights
            .Select((weight, i) => (weight, i))
            .Where(pair => pair.weight > 0)
            .Select(pair =>
                pair.i < demands.Length
                    ? demands[pair.i].Key
                    : _levers[(pair.i - demands.Length) % _levers.Count].Limit.Path
            );
        return change is null ? [.. keys.Distinct()] : [];
    }

    private static double Farthest(double[] a, double[] b)
    {
        double farthest = 0;
        for (int i = 0; i < Math.Max(a.Length, b.Length); i++)
        {
            farthest = Math.Max(farthest, Math.Abs(a.ElementAtOrDefault(i) - b.ElementAtOrDefault(i)));
        }

        return farthest;
    }

    private static double Length(double[] changes) => Math.Sqrt(changes.Sum(change => change * change));
}
