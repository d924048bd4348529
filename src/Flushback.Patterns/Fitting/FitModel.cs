namespace Flushback.Patterns.Fitting;

/// <summary>What is known of a fit so far: demands made straight about the latest trials, and how the pull goes.</summary>
internal sealed class FitModel(FitTrials trials, LeverSet levers, FitSettings settings)
{
    // Wide against the rounding of a sweep, small against any change that counts.
    private const double SlopeStep = 2e-4;
    private const double LeastStep = 1e-6;

    // So far inside a limit the next trial is aimed; a share of the limit.
    private const double Inside = 2e-4;

    // Walls of one kind that are kept; older ones stand too far away to be true.
    private const int MostWalls = 4;

    private readonly Dictionary<string, Plane> _measured = [];
    private readonly List<Plane> _walls = [];

    /// <summary>The demands, in the order they came up.</summary>
    public IEnumerable<Plane> Demands => [.. _measured.Values, .. _walls];

    /// <summary>Changes at the trial about which everything is made straight; null before one could be told.</summary>
    public double[]? Told { get; private set; }

    /// <summary>Pull there, as a share of the wanted one.</summary>
    public double PullShare { get; private set; }

    private double[] _pullSlope = [];

    /// <summary>The pull that changes would give, as a share of the wanted one.</summary>
    public double PullShareWith(ReadOnlySpan<double> changes) =>
        PullShare + Plane.Product(_pullSlope, changes) - Plane.Product(_pullSlope, Told);

    /// <summary>The demand that the pull is at least such a share of the wanted one.</summary>
    public Plane PullOf(double share) => new("pull", _pullSlope, share - PullShare + Plane.Product(_pullSlope, Told));

    /// <summary>Takes in a trial that could be told, as the place about which everything measured is made straight.</summary>
    public void Centre(FitTrial trial, double[] at)
    {
        Told = at;
        for (int i = 0; i < _walls.Count; i++)
        {
            _walls[i] = trial.Of(_walls[i].Key) is null ? _walls[i].Clearing(at, Inside) : _walls[i];
        }

        string[] measured = [.. trial.Shortfalls.Where(s => s.Measure is not null).Select(s => s.Key).Distinct()];
        if (settings.WantedPullN is not null || measured.Length > 0)
        {
            FitTrial?[] beside = BesideAll(at);
            Straighten(measured, trial, beside, at);
            if (settings.WantedPullN is { } pull)
            {
                PullShare = trial.PullN / pull;
                _pullSlope = Slope(trial, beside, at, told => told.PullN / pull);
            }
        }
    }

    /// <summary>Takes in what is wrong with a trial and was not known yet.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="at">Its changes.</param>
    public void Learn(FitTrial trial, double[] at)
    {
        string[] unknown =
        [
            .. trial
                .Wrong.Where(s => s.Measure is not null && !_measured.ContainsKey(s.Key))
                .Select(s => s.Key)
                .Distinct(),
        ];
        if (unknown.Length > 0)
        {
            Straighten(unknown, trial, BesideAll(at), at);
        }

        Intercepts intercepts = new(trials, levers);
        foreach (Shortfall wrong in trial.Wrong.Where(s => s.Measure is null).DistinctBy(s => s.Key))
        {
            double[] outside = Told is { } centre ? intercepts.JustOutside(wrong, centre, at) : at;
            if (intercepts.Through(wrong, outside, isNear: Told is not null) is { } plane)
            {
                Add(
                    Told is { } clear && !trial.IsTold ? plane.Clearing(clear, Inside) : plane,
                    Told is null ? 1 : MostWalls
                );
            }
            else if (Told is null || trial.IsTold)
            {
                Add(new Plane(wrong.Key, [], 1), 1);
            }
        }
    }

    /// <summary>Forgets every demand that was laid along the edge of what can be drawn.</summary>
    public void ForgetWalls() => _walls.Clear();

    private void Add(Plane wall, int most)
    {
        while (_walls.Count(other => other.Key == wall.Key) >= most)
        {
            _walls.RemoveAt(_walls.FindIndex(other => other.Key == wall.Key));
        }

        _walls.Add(wall);
    }

    private void Straighten(string[] keys, FitTrial trial, FitTrial?[] beside, double[] at)
    {
        foreach (string key in keys)
        {
            double[] slope = Slope(trial, beside, at, told => told.Of(key)?.Measure ?? 0);
            _measured[key] = Plane.Lowering(key, trial.Of(key)!.Measure!.Value, slope, at, Inside);
        }
    }

    private FitTrial?[] BesideAll(double[] at) => [.. Enumerable.Range(0, levers.Count).Select(i => Beside(i, at))];

    /// <summary>The trial a small step of one lever away, on the side where there is room; null when it cannot be told.</summary>
    private FitTrial? Beside(int lever, double[] at)
    {
        double[] changes = [.. at];
        double[] steps = at[lever] + SlopeStep <= levers[lever].Most ? [SlopeStep, -SlopeStep] : [-SlopeStep];
        foreach (double step in steps)
        {
            changes[lever] = at[lever] + step;
            FitTrial trial = trials.At(levers.With(changes));
            if (trial.IsTold)
            {
                return trial;
            }
        }

        return null;
    }

    private double[] Slope(FitTrial trial, FitTrial?[] beside, double[] at, Func<FitTrial, double> figure)
    {
        double here = figure(trial);
        double[] slope = new double[beside.Length];
        for (int i = 0; i < slope.Length; i++)
        {
            if (beside[i] is { } there)
            {
                // The step as it was really made, rounded by the number itself.
                double step = levers[i].ChangeTo(levers[i].Limit.Read(there.Parameters)!.Value) - at[i];
                slope[i] = Math.Abs(step) > LeastStep ? (figure(there) - here) / step : 0;
            }
        }

        return slope;
    }
}
