using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes;

/// <summary>The knife before the first pass and after each one.</summary>
/// <param name="Start">The knife as it was.</param>
/// <param name="Steps">One for each pass, in their order.</param>
public sealed record Simulation(SimulationStep Start, ImmutableArray<SimulationStep> Steps)
{
    /// <summary>The knife after the last pass.</summary>
    public SimulationStep End => Steps.IsEmpty ? Start : Steps[^1];

    /// <summary>Makes the passes one after another and reads the bench after each.</summary>
    /// <param name="placement">The knife as it is.</param>
    /// <param name="passes">The passes in their order.</param>
    /// <param name="settings">How to read the bench, and what has to be left.</param>
    /// <param name="cancellation">Looked at once a blade angle.</param>
    /// <returns>The simulation, or which pass cannot be made and why; exactly one of the two.</returns>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static (Simulation? Simulation, RefusedPass? Refused) Run(
        Placement placement,
        IReadOnlyList<Pass> passes,
        SimulationSettings settings,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(placement);
        ArgumentNullException.ThrowIfNull(passes);
        ArgumentNullException.ThrowIfNull(settings);
        SimulationReader reader = new(settings, cancellation);
        SimulationStep start = reader.Start(placement);
        ImmutableArray<SimulationStep>.Builder steps = ImmutableArray.CreateBuilder<SimulationStep>(passes.Count);
        SimulationStep last = start;
        for (int i = 0; i < passes.Count; i++)
        {
            (PassResult? result, PassProblem? problem) = PassCut.Make(
                last.Placement.Knife,
                last.Readings,
                passes[i],
                settings.Passes,
                cancellation
            );
            if (result is null)
            {
                return (null, new RefusedPass(i, passes[i], problem!, last));
            }

            last = reader.After(start, last, passes[i], result);
            steps.Add(last);
        }

        return (new Simulation(start, steps.ToImmutable()), null);
    }
}

/// <summary>A pass that cannot be made.</summary>
/// <param name="Index">Which one, counted from 0.</param>
/// <param name="Pass">The pass.</param>
/// <param name="Problem">Why.</param>
/// <param name="Before">The knife it was to be made on.</param>
public sealed record RefusedPass(int Index, Pass Pass, PassProblem Problem, SimulationStep Before);

/// <summary>How to simulate passes. Immutable.</summary>
public sealed record SimulationSettings
{
    /// <summary>How the bench is read.</summary>
    public BenchSettings Bench { get; init; } = new();

    /// <summary>What has to be left.</summary>
    public PassSettings Passes { get; init; } = PassSettings.Default;

    /// <summary>Whether each step gets its whole bench report and findings; without, only the stops are read.</summary>
    /// <value>Default: true.</value>
    public bool JudgesFindings { get; init; } = true;
}

/// <summary>The knife after a pass, or before the first.</summary>
public sealed record SimulationStep
{
    /// <summary>The pass; null before the first.</summary>
    public Pass? Pass { get; init; }

    /// <summary>The knife so far, with its outlines and faces, and the way back to the drawing.</summary>
    public required Placement Placement { get; init; }

    /// <summary>The dial at the stops, zeroed at open as a maker would zero it now; rest angles and contacts.</summary>
    public required StopReadings Readings { get; init; }

    /// <summary>
    /// The dial against where it stood open before the first pass, without zeroing it again: in the order of
    /// <see cref="Readings"/>, in millimetres.
    /// </summary>
    public required ImmutableArray<double> RawLiftsMm { get; init; }

    /// <summary>What the pass took off; null before the first.</summary>
    public RemovedMetal? Removed { get; init; }

    /// <summary>The whole bench report; null when only the stops were read.</summary>
    public BenchReport? Report { get; init; }

    /// <summary>Findings that were not there before this pass, told by code and stop.</summary>
    public ImmutableArray<Finding> NewFindings { get; init; } = [];

    /// <summary>Findings that this pass has settled.</summary>
    public ImmutableArray<Finding> SettledFindings { get; init; } = [];

    /// <summary>What to mind with this pass, each in one sentence.</summary>
    public ImmutableArray<string> Cautions { get; init; } = [];
}
