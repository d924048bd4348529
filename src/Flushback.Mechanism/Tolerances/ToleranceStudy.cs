using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Tolerances.Chance;
using Flushback.Mechanism.Tolerances.Drawing;
using Flushback.Mechanism.Tolerances.Solving;

namespace Flushback.Mechanism.Tolerances;

/// <summary>Draws random parts of a knife within its tolerances and reads each on the bench.</summary>
/// <remarks>
/// Parts may be read in any order and by any number of threads: each draws from a stream of its own, so the result is the
/// same to the last digit.
/// </remarks>
public sealed class ToleranceStudy
{
    private readonly PartDrawing _drawing;
    private readonly PartChance _chance;
    private readonly PartReading[] _parts;
    private readonly Figures?[] _bent;
    private readonly BentParts? _bending;
    private readonly Point _tip;
    private readonly double _openHeightMm;
    private readonly bool _hasHalfStop;

    private ToleranceStudy(
        Placement placement,
        ToleranceSettings settings,
        ToleranceList list,
        PartSolver asDrawn,
        PartDrawing drawing,
        BentParts? bending,
        CancellationToken cancellation
    )
    {
        (Placement, Settings, List) = (placement, settings, list);
        _hasHalfStop = asDrawn.HalfStop is not null;
        _tip = DrawnBlade.TipOf(placement.Knife.Blade);
        _openHeightMm = asDrawn.OpenHeightMm;
        _drawing = drawing;
        _bending = bending;
        _chance = new PartChance(List, settings.Distribution, settings.Seed);
        _parts = new PartReading[settings.Parts];
        _bent = new Figures?[bending is null ? 0 : Math.Min(PartsBent, settings.Parts)];
        AsDrawn = asDrawn.Read(_tip, _openHeightMm);
        ImmutableArray<Derivatives> ofBench = DerivativeTable.Of(
            _drawing,
            new ReadingGradient(asDrawn, _tip),
            AsDrawn,
            part => PartSolver.Solve(part, _hasHalfStop, cancellation)?.Read(_tip, _openHeightMm)
        );
        Derivatives = bending is null ? ofBench : ofBench.AddRange(bending.Derivatives);
    }

    /// <summary>So many parts are bent in the handle too, to hold the derivatives of pull and stress to.</summary>
    public const int PartsBent = 100;

    /// <summary>The knife as drawn.</summary>
    public Placement Placement { get; }

    /// <summary>What varies and how.</summary>
    public ToleranceSettings Settings { get; }

    /// <summary>The tolerances and their dimensions.</summary>
    public ToleranceList List { get; }

    /// <summary>What the knife reads as drawn.</summary>
    public PartReading AsDrawn { get; }

    /// <summary>Derivatives of what the bench tells, and of pull and stress where the handle is asked for.</summary>
    public ImmutableArray<Derivatives> Derivatives { get; }

    /// <summary>Begins a study.</summary>
    /// <param name="placement">The knife in its frame, from <see cref="KnifePlacement"/>.</param>
    /// <param name="settings">What varies and how.</param>
    /// <param name="cancellation">Looked at once a pose of the spring.</param>
    /// <returns>The study, or why there can be none; exactly one of the two.</returns>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static (ToleranceStudy? Study, ImmutableArray<KnifeProblem> Problems) Begin(
        Placement placement,
        ToleranceSettings settings,
        CancellationToken cancellation = default
    )
    {
        Knife knife = placement.Knife;
        ToleranceList list = ToleranceList.For(knife, settings);
        if (list.Tolerances.IsEmpty)
        {
            return (null, [ToleranceProblems.NothingVaries]);
        }

        DrawnPart drawn = new(knife, PartMotion.None);
        if (PartSolver.Solve(drawn, hasHalfStop: true, cancellation) is not { } solved)
        {
            return (null, [ToleranceProblems.DoesNotTurn]);
        }

        bool hasHalfStop = knife.HasHalfStop ?? solved.HalfStop is { Rests: true };
        PartSolver asDrawn = hasHalfStop ? solved : PartSolver.Solve(drawn, hasHalfStop: false, cancellation)!;
        PartDrawing drawing = new(knife, list, RearmostContactX(asDrawn));
        BentParts? bending = null;
        if (settings.Handle is { } handle)
        {
            (bending, ImmutableArray<KnifeProblem> problems) = BentParts.Of(placement, drawing, handle, cancellation);
            if (bending is null)
            {
                return (null, problems);
            }
        }

        return (new ToleranceStudy(placement, settings, list, asDrawn, drawing, bending, cancellation), []);
    }

    /// <summary>Does a whole study on all cores.</summary>
    /// <inheritdoc cref="Begin"/>
    /// <returns>The report, or why there is none; exactly one of the two.</returns>
    public static (ToleranceReport? Report, ImmutableArray<KnifeProblem> Problems) Run(
        Placement placement,
        ToleranceSettings settings,
        CancellationToken cancellation = default
    )
    {
        (ToleranceStudy? study, ImmutableArray<KnifeProblem> problems) = Begin(placement, settings, cancellation);
        if (study is null)
        {
            return (null, problems);
        }

        Parallel.For(
            0,
            study.Slices,
            new ParallelOptions { CancellationToken = cancellation },
            slice => study.ReadSlice(slice, cancellation)
        );
        return (study.Report(cancellation), []);
    }

    /// <summary>Parts that are read at a stretch.</summary>
    public const int SliceParts = 32;

    /// <summary>How many slices the parts make.</summary>
    public int Slices => (Settings.Parts + SliceParts - 1) / SliceParts;

    /// <summary>How many parts a slice has.</summary>
    /// <param name="slice">Which, from 0.</param>
    public int PartsIn(int slice) => Math.Min(SliceParts, Settings.Parts - (slice * SliceParts));

    /// <summary>Draws and reads the parts of a slice.</summary>
    /// <param name="slice">Which, from 0.</param>
    /// <param name="cancellation">Looked at once a pose of the spring.</param>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public void ReadSlice(int slice, CancellationToken cancellation = default) =>
        Read(slice * SliceParts, PartsIn(slice), cancellation);

    /// <summary>Draws parts and reads them.</summary>
    /// <param name="first">Number of the first, from 0.</param>
    /// <param name="count">How many.</param>
    /// <param name="cancellation">Looked at once a pose of the spring.</param>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public void Read(int first, int count, CancellationToken cancellation = default)
    {
        double[] deviations = new double[List.Dimensions.Length];
        for (int part = first; part < first + count; part++)
        {
            _chance.Draw(part, deviations);
            _parts[part] = ReadPart(deviations, cancellation);
            if (part < _bent.Length)
            {
                _bent[part] = _parts[part].IsAssembled ? _bending!.Read(deviations, cancellation) : null;
            }
        }
    }

    /// <summary>What a part with given deviations reads.</summary>
    /// <param name="deviationsMm">Deviations in the order of the dimensions.</param>
    /// <param name="cancellation">Looked at once a pose of the spring.</param>
    public PartReading ReadPart(ReadOnlySpan<double> deviationsMm, CancellationToken cancellation = default) =>
        _drawing.Draw(deviationsMm) is { } drawn && PartSolver.Solve(drawn, _hasHalfStop, cancellation) is { } solved
            ? solved.Read(_tip, _openHeightMm)
            : default;

    /// <summary>The part with given deviations; null when there is no such part.</summary>
    /// <param name="deviationsMm">Deviations in the order of the dimensions.</param>
    public Knife? DrawPart(ReadOnlySpan<double> deviationsMm) => _drawing.Draw(deviationsMm)?.Knife;

    /// <summary>The figures of all parts, once they are read.</summary>
    /// <param name="cancellation">Looked at once a part.</param>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public ToleranceReport Report(CancellationToken cancellation = default)
    {
        ImmutableArray<PartReading> parts = [.. _parts];
        SpreadFigures figures = new(Settings, List, _chance, Derivatives, parts, cancellation);
        return new ToleranceReport
        {
            Placement = Placement,
            Settings = Settings,
            List = List,
            AsDrawn = AsDrawn,
            Derivatives = Derivatives,
            Parts = parts,
            Counts = figures.Counts,
            Within = figures.Within,
            Spreads = figures.Spreads(),
            Tightenings = figures.Tightenings(),
            Bent = _bending is null ? null : Compare(),
        };
    }

    private BentComparison Compare()
    {
        double[] deviations = new double[List.Dimensions.Length];
        double pull = 0;
        double stress = 0;
        for (int part = 0; part < _bent.Length; part++)
        {
            if (_bent[part] is { } figures)
            {
                _chance.Draw(part, deviations);
                pull = Math.Max(pull, Math.Abs(figures.PullN - LinearAt(Outcome.Pull)));
                stress = Math.Max(stress, Math.Abs(figures.StressMpa - LinearAt(Outcome.PeakStress)));
            }
        }

        return new BentComparison(_bent.Length, _bent.Count(figures => figures is null), pull, stress);

        double LinearAt(Outcome outcome)
        {
            Derivatives derivatives = Derivatives.First(d => d.Of == outcome);
            return derivatives.AsDrawn + derivatives.Change(deviations);
        }
    }

    private static double RearmostContactX(PartSolver solved) =>
        solved
            .Track.Poses.Where(pose =>
                pose.IsPossible
                && pose.BladeAngle >= solved.Open.Pose.BladeAngle
                && pose.BladeAngle <= solved.Closed.Pose.BladeAngle
            )
            .Append(solved.Open.Pose)
            .Append(solved.Closed.Pose)
            .Min(pose => solved.Part.Knife.SpringAt(pose.Lowest).Inverse.Apply(pose.Support.At).X);
}
