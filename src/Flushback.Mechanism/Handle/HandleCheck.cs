using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle.Solving;
using Flushback.Mechanism.Handle.Suggestions;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Materials;

namespace Flushback.Mechanism.Handle;

/// <summary>Puts a knife that has been read on the bench into its handle.</summary>
public static class HandleCheck
{
    /// <summary>Turns the blade under the elastic spring and reports what the hand and the steel feel.</summary>
    /// <param name="bench">The bench report of the same knife.</param>
    /// <param name="settings">Spring, steel and friction.</param>
    /// <param name="cancellation">Looked at once a blade angle.</param>
    /// <returns>The report, or every problem found; exactly one of the two.</returns>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static (HandleReport? Report, ImmutableArray<KnifeProblem> Problems) Run(
        BenchReport bench,
        HandleSettings settings,
        CancellationToken cancellation = default
    ) => Run(bench, settings, isBrief: false, cancellation);

    /// <summary>The same without sensitivities and suggestion, at a fraction of the cost: for a search over many knives.</summary>
    /// <inheritdoc cref="Run(BenchReport, HandleSettings, CancellationToken)"/>
    public static (HandleReport? Report, ImmutableArray<KnifeProblem> Problems) RunBriefly(
        BenchReport bench,
        HandleSettings settings,
        CancellationToken cancellation = default
    ) => Run(bench, settings, isBrief: true, cancellation);

    private static (HandleReport? Report, ImmutableArray<KnifeProblem> Problems) Run(
        BenchReport bench,
        HandleSettings settings,
        bool isBrief,
        CancellationToken cancellation
    )
    {
        (HandleModel? model, ImmutableArray<KnifeProblem> problems) = Build(bench.Placement, settings, cancellation);
        if (model is null)
        {
            return (null, problems);
        }

        HandleSweep? sweep = model.CanTurn ? new HandleSweep(model, bench.Settings.Step, cancellation) : null;
        return HandleProblems.Stuck(model, sweep) is { } stuck
            ? (null, [stuck])
            : (Report(bench, model, sweep!, isBrief, cancellation), []);
    }

    /// <summary>The knife in its handle, or why it cannot be put there.</summary>
    internal static (HandleModel? Model, ImmutableArray<KnifeProblem> Problems) Build(
        Placement placement,
        HandleSettings settings,
        CancellationToken cancellation
    )
    {
        ImmutableArray<KnifeProblem> problems = HandleProblems.Before(placement, settings);
        if (!problems.IsEmpty)
        {
            return (null, problems);
        }

        HandleModel model = new(new BenchGround(placement.Knife, cancellation), settings, 0, cancellation);
        return HandleProblems.Thin(placement, model.Beam) is { } thin ? (null, [thin]) : (model, []);
    }

    private static HandleReport Report(
        BenchReport bench,
        HandleModel model,
        HandleSweep sweep,
        bool isBrief,
        CancellationToken cancellation
    )
    {
        NoseState open = sweep.Open.State;
        StressLine stress = model.Stress;
        HandleReport report = new()
        {
            Settings = model.Settings,
            Spring = new SpringFigures(
                model.PreloadMm,
                -model.Beam.StiffFromXMm,
                model.Beam.OverhangMm,
                model.Beam.SpanMm,
                model.StiffnessNPerMm,
                model.Settings.SpringSteel.ModulusUsedMpa
            ),
            Stops = [.. bench.Stops.Select(reading => StopOf(reading, model, sweep))],
            Curve = [.. sweep.States.Select(sweep.Sample)],
            Pull = sweep.Pull,
            StressAlong =
            [
                .. stress.XMm.Select(
                    (x, i) => new StressPoint(x, stress.At(i, open.Load), stress.At(i, sweep.Worst.Load))
                ),
            ],
            Strength = SpringStrength.Judge(model, sweep),
            Sensitivities = isBrief ? [] : Sensitivities.Of(model, cancellation),
            Suggestion = isBrief ? null : SuggestionSearch.For(model, bench.Settings.Step, cancellation),
            Findings = [],
        };
        return report with { Findings = HandleRules.Judge(report) };
    }

    private static HandleStop StopOf(StopReading reading, HandleModel model, HandleSweep sweep)
    {
        HandleRest rest = reading.Stop switch
        {
            Stop.Open => sweep.Open,
            Stop.Closed => sweep.Closed,
            _ => model.Rests.Near(reading.NominalAngle),
        };
        Angle at = rest.State.BladeAngle;
        (double snap, Angle takesOver) = sweep.TowardsStop(at, isOpen: reading.Stop == Stop.Open);
        return new HandleStop(
            reading.Stop,
            rest.Rests,
            at,
            sweep.LiftMm(rest.State),
            reading.LiftMm,
            model.Stress.Peak(rest.State.Load).StressMpa,
            [.. rest.Contacts.Select(contact => ContactOf(contact, model))],
            snap,
            takesOver
        );
    }

    private static HandleContact ContactOf(NoseContact contact, HandleModel model)
    {
        Knife knife = model.Ground.Knife;
        HandleSettings settings = model.Settings;
        FaceNaming faces = new(knife);
        double softer = Math.Min(settings.SpringHardnessHrc, settings.BladeHardnessHrc);
        ValueRange? tensile =
            softer == settings.SpringHardnessHrc
                ? settings.SpringSteel.TensileAt(softer)
                : HardnessConversion.TensileMpa(softer);
        return new HandleContact(
            contact.Feature.At,
            contact.Feature.Normal,
            contact.ForceN,
            faces.BladeFaceOf(contact.Feature.BladeEdge, contact.Feature.BladeVertex),
            faces.SpringFaceOf(contact.Feature.SpringEdge, contact.Feature.SpringVertex),
            LineContact.RadiusMm(knife, contact.Feature) is { } radius
                ? LineContact.PressureMpa(contact.ForceN, settings.WidthMm, radius, settings.SpringSteel.ModulusUsedMpa)
                : null,
            tensile is { } strength ? SpringStrength.YieldPressureMpa(strength.Low) : null
        );
    }
}
