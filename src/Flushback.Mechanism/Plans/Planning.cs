using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Measured;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans.Solving;

namespace Flushback.Mechanism.Plans;

/// <summary>Plans the least removal that brings a knife from what it reads to what it should read.</summary>
public static class Planning
{
    // More than any open flat can give.
    private const double FreeOpenFlatMm = 3;

    /// <summary>Plans.</summary>
    /// <param name="placement">The knife as it is.</param>
    /// <param name="settings">What is to be reached and what may be taken.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    /// <returns>The passes and what they lead to; where the targets cannot be reached, the nearest, and why.</returns>
    /// <exception cref="ArgumentException">When a depth of the tip is wanted of a knife without a handle.</exception>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static PlanReport Run(Placement placement, PlanSettings settings, CancellationToken cancellation = default)
    {
        ArgumentNullException.ThrowIfNull(placement);
        ArgumentNullException.ThrowIfNull(settings);
        Check(placement, settings);
        StopReadings start = StopCheck.Run(placement.Knife, settings.Simulation.Bench, cancellation).Readings;
        Knife knife = placement.Knife with { HasHalfStop = start.HasHalfStop };
        PlanSearch search = PlanSearch.Run(knife, start, settings, cancellation);
        PlanSearch? freed = search.OpenFlat.IsShort
            ? search.With(settings with { MostOffOpenFlatMm = FreeOpenFlatMm })
            : null;
        SimulationSettings simulated = settings.Simulation with
        {
            Bench = settings.Simulation.Bench with { Targets = settings.Aims },
        };
        (Simulation? simulation, RefusedPass? refused) = Simulation.Run(
            placement,
            search.Trial.Passes,
            simulated,
            cancellation
        );
        if (simulation is null)
        {
            throw new InvalidOperationException(
                $"A pass of the plan cannot be made again: {refused!.Problem.Sentence}"
            );
        }

        bool settled = search.HasSettled && search.Trial.Refused is null;
        return new PlanReport
        {
            Settings = settings,
            Simulation = simulation,
            Obstacles = new Obstacles(search, freed, settings).All(),
            Optimum = settled ? search.Optimum() : null,
        };
    }

    /// <summary>Plans from what the dial really read: finds the offsets of the faces that explain it, and goes on from there.</summary>
    /// <param name="drawn">The knife as drawn.</param>
    /// <param name="measured">What the dial read.</param>
    /// <param name="settings">What is to be reached and what may be taken.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    /// <returns>The plan, or why the readings cannot be explained; exactly one of the two.</returns>
    /// <exception cref="ArgumentException">When a depth of the tip is wanted of a knife without a handle.</exception>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static (PlanReport? Plan, MeasuredProblem? Problem) FromMeasured(
        Placement drawn,
        MeasuredReadings measured,
        PlanSettings settings,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(drawn);
        ArgumentNullException.ThrowIfNull(settings);
        Check(drawn, settings);
        (MeasuredKnife? knife, MeasuredProblem? problem) = MeasuredKnife.Explain(
            drawn,
            measured,
            settings.MostMeasuredOffsetMm,
            settings.Simulation.Bench,
            cancellation
        );
        return knife is null
            ? (null, problem)
            : (Run(knife.Placement, settings, cancellation) with { Measured = knife }, null);
    }

    private static void Check(Placement placement, PlanSettings settings)
    {
        if (settings.TipDepth is not null && placement.Knife.Handle is null)
        {
            throw new ArgumentException(
                "A depth of the tip is wanted but the drawing has no handle; draw the handle, or leave the depth out.",
                nameof(settings)
            );
        }
    }
}
