using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Fitting;

/// <summary>Draws and checks one page after another.</summary>
/// <param name="settings">What is wanted.</param>
/// <param name="cancellation">Looked at once a pose of the spring.</param>
internal sealed class FitTrials(FitSettings settings, CancellationToken cancellation)
{
    /// <summary>Key of the stress in the handle.</summary>
    public const string StressKey = "stress";

    // Below this a limit is no measure for what is over it; 0.1 mm, deg or N.
    private const double LeastScale = 0.1;

    /// <summary>How many pages were drawn.</summary>
    public int Drawn { get; private set; }

    /// <summary>Draws a page and checks it.</summary>
    public FitTrial At(PatternParameters parameters)
    {
        (FitTrial trial, DrawnPattern? pattern) = Draw(parameters);
        if (pattern is null)
        {
            return trial;
        }

        Placement placement = new(pattern.Knife, RigidMotion.Identity, Angle.Zero, DrawnBladeAngleFound: false);
        BenchReport bench = BenchCheck.Run(placement, settings.Bench(pattern.Dimensions), cancellation);
        FitTrial onBench = trial with { IsTold = true, Shortfalls = [.. bench.Findings.SelectMany(FoundIn)] };
        return settings.Handle is { } handle ? InHandle(onBench, bench, handle(pattern.Dimensions)) : onBench;
    }

    /// <summary>Draws a page and leaves it at that.</summary>
    public FitTrial DrawnFrom(PatternParameters parameters) => Draw(parameters).Trial;

    private (FitTrial Trial, DrawnPattern? Pattern) Draw(PatternParameters parameters)
    {
        cancellation.ThrowIfCancellationRequested();
        ImmutableArray<Shortfall> early =
        [
            .. PatternDrawing
                .LayoutConflicts(new PatternLayout(parameters))
                .Select(conflict => OfConflict(conflict, FitStage.Layout)),
        ];
        if (!early.IsEmpty)
        {
            return (Ending(FitStage.Layout, early), null);
        }

        Drawn++;
        (DrawnPattern? pattern, PatternConflict? conflict) = PatternDrawing.Make(parameters, cancellation);
        return conflict is null
            ? (Ending(FitStage.Check, []), pattern)
            : (Ending(FitStage.Drawing, [OfConflict(conflict, FitStage.Drawing)]), null);

        FitTrial Ending(FitStage stage, ImmutableArray<Shortfall> wrong) =>
            new()
            {
                Parameters = parameters,
                Stage = stage,
                Shortfalls = wrong,
            };
    }

    private FitTrial InHandle(FitTrial trial, BenchReport bench, HandleSettings handle)
    {
        (HandleReport? report, ImmutableArray<KnifeProblem> problems) = HandleCheck.RunBriefly(
            bench,
            handle,
            cancellation
        );
        if (report is null)
        {
            IEnumerable<Shortfall> stuck = problems.Select(problem => new Shortfall(
                problem.Reason,
                FitSettings.SpringPaths,
                null,
                problem.Sentence,
                FitStage.Check
            ));
            return trial with { IsTold = false, Shortfalls = [.. trial.Shortfalls, .. stuck] };
        }

        double stress = report.Strength.PeakStressMpa;
        return trial with
        {
            PullN = report.Pull.PullN,
            StressMpa = stress,
            Shortfalls = [.. trial.Shortfalls, .. report.Findings.SelectMany(FoundIn), .. Stress(stress)],
        };
    }

    private IEnumerable<Shortfall> Stress(double stressMpa)
    {
        if (settings.MostStressMpa is { } most)
        {
            yield return new Shortfall(
                StressKey,
                FitSettings.SpringPaths,
                (stressMpa / most) - 1,
                FormattableString.Invariant($"The spring is bent to {stressMpa:0} MPa, over the {most:0} MPa allowed."),
                FitStage.Check
            );
        }
    }

    private IEnumerable<Shortfall> FoundIn(Finding finding)
    {
        if (!settings.WantsNoFindings || finding.Severity == Severity.Note)
        {
            yield break;
        }

        double? measure =
            finding is { Value: { } value, Limit: { } limit } && value != limit
                ? Math.Abs(value - limit) / Math.Max(Math.Abs(limit), LeastScale)
                : null;
        yield return new Shortfall(
            $"{finding.Code}/{finding.Stop}",
            Remedies.For(finding) ?? [.. PatternLimits.All.Select(row => row.Path)],
            measure,
            finding.Message,
            FitStage.Check
        );
    }

    private static Shortfall OfConflict(PatternConflict conflict, FitStage stage) =>
        new(string.Join("+", conflict.Parameters), conflict.Parameters, null, conflict.Sentence, stage);
}
