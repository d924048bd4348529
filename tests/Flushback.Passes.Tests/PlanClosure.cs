using Flushback.Catalogue.Designs;
using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Plans;

namespace Flushback.Passes.Tests;

/// <summary>Judges a plan from outside: by other passes simulated on the same knife, and by the referee's polygons.</summary>
/// <remarks>Each judgement lists what is wrong; nothing is wrong with a plan when all lists are empty.</remarks>
internal sealed class PlanClosure
{
    // Two ten-thousandths of an inch: what a good dial tells.
    public const double DialMm = 0.0002 * 25.4;

    public const double SettledMm = 5e-6;
    private const double SettledRad = 1e-6;
    private const double RefereeDeg = 1e-3;
    private const double AreaMm2 = 1e-6;

    private static readonly SimulationSettings _quick = new() { JudgesFindings = false };

    private static readonly Site[] _openCorners =
    [
        Site.On(SpringFace.NoseCorner),
        Site.On(SpringFace.Underside),
        Site.On(BladeFace.OpenCorner),
    ];

    private readonly Pass[] _passes;

    public PlanClosure(PlanReport plan)
    {
        Plan = plan;
        _passes = [.. plan.Simulation.Steps.Select(step => step.Pass!)];
    }

    public PlanReport Plan { get; }

    /// <summary>The plan of a random knife.</summary>
    public static PlanClosure Of(int seed, PlanSettings? settings = null) =>
        new(
            Planning.Run(
                new Placement(KnifeGenerator.FromSeed(seed).ToKnife(), default, default, DrawnBladeAngleFound: false),
                settings ?? new PlanSettings()
            )
        );

    /// <summary>Random knives that read high: every stop but open above its window, and open where it may rest or can be brought.</summary>
    public static IEnumerable<int> HighSeeds(int first = 1) =>
        Enumerable.Range(first, int.MaxValue - first).Where(seed => ReadsHigh(KnifeGenerator.FromSeed(seed).ToKnife()));

    /// <summary>Targets and windows missed, as the solver and as the referee reads the knife at the end.</summary>
    public IEnumerable<string> OffTarget()
    {
        foreach (PlanObstacle obstacle in Plan.Obstacles)
        {
            yield return obstacle.Sentence;
        }

        SimulationStep end = Plan.Simulation.End;
        BruteForceBench bench = BruteForceBench.For(end.Placement.Knife);
        BenchPose open = bench.OpenRest() ?? bench.PoseAt(end.Readings.Stops[0].RestAngle);
        if (Math.Abs(open.BladeAngle.Degrees) > Plan.Settings.OpenAngleTolerance.Degrees + RefereeDeg)
        {
            yield return $"Open rests at {open.BladeAngle.Degrees} degrees by the referee";
        }

        foreach (StopReading reading in end.Readings.Stops.Skip(1))
        {
            Angle margin = Angle.FromDegrees(0.1);
            BenchPose rest = bench.RestBetween(reading.RestAngle - margin, reading.RestAngle + margin);
            double off = bench.LiftMm(open.SpringRotation, rest.SpringRotation) - Plan.Settings.AimMm(reading.Stop);

            // A stop that came into its window without a cut of its own stays where it is.
            bool isCut = _passes.Any(pass => pass is FlatSlice slice && StopOf(slice.Face) == reading.Stop);
            double most = isCut ? DialMm : Plan.Settings.Targets.For(reading.Stop).ToleranceMm + DialMm;
            if (Math.Abs(off) > most)
            {
                yield return $"{reading.Stop} reads {off} mm off its target by the referee";
            }

            double angle = Math.Abs((rest.BladeAngle - reading.NominalAngle).Degrees);
            if (angle > Plan.Settings.RestAngleTolerance.Degrees + RefereeDeg)
            {
                yield return $"{reading.Stop} rests {angle} degrees off by the referee";
            }
        }
    }

    /// <summary>Passes that take nothing off, or leave metal where there was none.</summary>
    public IEnumerable<string> AddsMetal()
    {
        SimulationStep before = Plan.Simulation.Start;
        foreach (SimulationStep step in Plan.Simulation.Steps)
        {
            (Knife old, Knife left) = (before.Placement.Knife, step.Placement.Knife);
            bool standsOut =
                StandsOut(left.Blade, old.Blade) || StandsOut(left.Spring, old.Spring) || step.Removed!.AreaMm2 <= 0;
            if (standsOut)
            {
                yield return $"{step.Pass} adds metal";
            }

            before = step;
        }
    }

    /// <summary>Passes that can be left out, or be a twentieth smaller, with every reading where the plan lands.</summary>
    /// <remarks>Of a round that changes no reading, only the radius is asked for: without it a corner must still take one.</remarks>
    public IEnumerable<string> Spare()
    {
        if (MissesTarget(_passes) is not null)
        {
            yield return "The passes do not land where the plan says";
        }

        for (int i = 0; i < _passes.Length; i++)
        {
            Pass[] without = [.. _passes[..i], .. _passes[(i + 1)..]];
            Pass[] smaller = [.. _passes[..i], Smaller(_passes[i]), .. _passes[(i + 1)..]];
            if (MissesTarget(without) is null && !StillTakes(without, _passes[i]))
            {
                yield return $"{_passes[i]} can be left out";
            }

            if (MissesTarget(smaller) is null && !StillTakes(smaller, _passes[i]))
            {
                yield return $"{_passes[i]} can shrink";
            }
        }
    }

    /// <summary>Multipliers of the wrong sign and gradients left over.</summary>
    public IEnumerable<string> OutOfBalance()
    {
        if (Plan.Optimum is not { } optimum)
        {
            yield return "No optimum is told";
            yield break;
        }

        foreach (FaceOptimum face in optimum.Faces)
        {
            // Where contacts change the gradient jumps and none vanishes; tilting either way has to tell there.
            bool vanishes = face.ResidualMm2PerMm < 1e-3 || face.Held == TiltHeld.ByContacts;
            if (face.ReadingMultiplier < 0 || face.HeldMultiplier < 0 || !vanishes)
            {
                yield return $"{face}";
            }
        }
    }

    /// <summary>Tilts of a face's cut that take less metal with all readings at their targets.</summary>
    /// <remarks>
    /// The cut is tilted a little either way and set to its target again, by trial. What the tilt did to the other stop
    /// through the zero is paid for at that stop's multiplier.
    /// </remarks>
    public IEnumerable<string> Cheaper(params double[] tiltsMm)
    {
        foreach (Site face in new[] { Site.On(BladeFace.ClosedFace), Site.On(BladeFace.HalfStopFace) })
        {
            FlatSlice[] slices = [.. _passes.OfType<FlatSlice>().Where(slice => slice.Face == face)];
            if (slices.Length == 0)
            {
                continue;
            }

            Stop stop = StopOf(face);
            foreach (double tilt in tiltsMm)
            {
                if (Restored(face, slices.Sum(slice => slice.FrontDepthMm) + tilt, stop) is not { } tilted)
                {
                    continue;
                }

                double area = tilted.Steps.Sum(step => step.Removed!.AreaMm2) + PaidAtOther(tilted, stop);
                if (InWindows(tilted) && area < Plan.RemovedMm2 - AreaMm2)
                {
                    yield return $"A tilt of {tilt} mm on the {face.Name} saves {Plan.RemovedMm2 - area} mm2";
                }
            }
        }
    }

    /// <remarks>
    /// Where the shoulder holds the open blade, taking metal off lets it open further and nothing brings it back (elementary):
    /// such a knife is none of these when the rounds wanted, made on it as drawn, take it out of its window.
    /// </remarks>
    private static bool ReadsHigh(Knife knife)
    {
        PlanSettings settings = new();
        StopReadings readings = StopCheck.Run(knife, new BenchSettings()).Readings;
        return readings
                .Stops.Skip(1)
                .All(stop =>
                    stop.Rests && stop.LiftMm > settings.AimMm(stop.Stop) + settings.Targets.For(stop.Stop).ToleranceMm
                ) && !OpensTooFar(knife, readings, settings);
    }

    /// <summary>True when the open blade, with every corner rounded that takes a round, rests outside its window against the shoulder.</summary>
    public static bool OpensTooFar(Knife knife, StopReadings readings, PlanSettings settings)
    {
        foreach (Site corner in _openCorners)
        {
            RoundCorner round = new(corner, settings.LeastCornerRadiusMm);
            knife = PassCut.Make(knife, readings, round, PassSettings.Default).Result?.Knife ?? knife;
        }

        StopReading open = StopCheck.Run(knife, new BenchSettings()).Readings.Stops[0];
        return Math.Abs(open.RestAngle.Radians) > settings.OpenAngleTolerance.Radians
            && open.Contacts.Any(contact =>
                contact.BladeFace == BladeFace.Shoulder || contact.SpringFace == SpringFace.EndFace
            );
    }

    private static Stop StopOf(Site face) =>
        face.Blade switch
        {
            BladeFace.ClosedFace => Stop.Closed,
            BladeFace.HalfStopFace => Stop.HalfStop,
            _ => Stop.Open,
        };

    private static bool StandsOut(Outline left, Outline old) =>
        !ReferenceEquals(left, old)
        && left.Edges.Any(edge =>
            new[] { 0, 0.25, 0.5, 0.75 }.Any(fraction => old.SignedDistanceMm(edge.PointAt(fraction)) < -2e-6)
        );

    private static Pass Smaller(Pass pass) =>
        pass switch
        {
            FlatSlice slice => slice with
            {
                FrontDepthMm = 0.95 * slice.FrontDepthMm,
                RearDepthMm = 0.95 * slice.RearDepthMm,
            },
            RoundCorner round => round with { RadiusMm = 0.95 * round.RadiusMm },
            ReliefArc relief => relief with { DepthMm = 0.95 * relief.DepthMm },
            _ => throw new ArgumentOutOfRangeException(nameof(pass), pass, "No pass of a plan."),
        };

    /// <summary>True when a round or a relief still finds metal after other passes: what it is for would be missed.</summary>
    private bool StillTakes(Pass[] passes, Pass pass) =>
        pass is RoundCorner or ReliefArc
        && Simulated(passes) is { } without
        && PassCut.Make(without.End.Placement.Knife, without.End.Readings, pass, PassSettings.Default).Result
            is not null;

    private Simulation? Simulated(IReadOnlyList<Pass> passes) =>
        Simulation.Run(Plan.Simulation.Start.Placement, passes, _quick).Simulation;

    private string? MissesTarget(IReadOnlyList<Pass> passes) =>
        Simulated(passes) is not { } simulation ? "cannot be made"
        : !InWindows(simulation) ? "leaves a window"
        : simulation.End.Readings.Stops.Any(reading =>
            Math.Abs(reading.LiftMm - Plan.Simulation.End.Readings.At(reading.Stop)!.LiftMm) > SettledMm
        )
            ? "reads elsewhere"
        : null;

    private bool InWindows(Simulation simulation) =>
        simulation.End.Readings.Stops.All(reading =>
            reading.Rests
            && Math.Abs((reading.RestAngle - reading.NominalAngle).Radians)
                < Tolerance(reading.Stop).Radians + SettledRad
        );

    private Angle Tolerance(Stop stop) =>
        stop == Stop.Open ? Plan.Settings.OpenAngleTolerance : Plan.Settings.RestAngleTolerance;

    private double PaidAtOther(Simulation tilted, Stop stop) =>
        Plan.Optimum!.Faces.Where(face => face.Stop != stop)
            .Sum(face =>
                face.ReadingMultiplier
                * (tilted.End.Readings.At(face.Stop)!.LiftMm - Plan.Simulation.End.Readings.At(face.Stop)!.LiftMm)
            );

    /// <summary>The passes with another front depth off a face and the rear depth that brings its stop to its target.</summary>
    private Simulation? Restored(Site face, double frontMm, Stop stop)
    {
        double wanted = Plan.Simulation.End.Readings.At(stop)!.LiftMm;
        double rear = _passes.OfType<FlatSlice>().Where(slice => slice.Face == face).Sum(slice => slice.RearDepthMm);
        (double before, double beforeOff) = (double.NaN, double.NaN);
        for (int i = 0; i < 14 && frontMm >= 0 && rear >= 0; i++)
        {
            if (Simulated(WithDepths(face, frontMm, rear)) is not { } simulation)
            {
                return null;
            }

            double off = simulation.End.Readings.At(stop)!.LiftMm - wanted;
            if (Math.Abs(off) < 1e-8)
            {
                return simulation;
            }

            double slope = double.IsNaN(before) ? -0.5 : (off - beforeOff) / (rear - before);
            (before, beforeOff) = (rear, off);
            rear -= off / slope;
        }

        return null;
    }

    /// <summary>The passes with other depths off a face, in one slice or, where the plan has two, by its ends and level.</summary>
    private Pass[] WithDepths(Site face, double frontMm, double rearMm)
    {
        double level = Math.Min(frontMm, rearMm);
        bool inTwo = _passes.Count(pass => pass is FlatSlice slice && slice.Face == face) > 1;
        Queue<FlatSlice> slices = new(
            inTwo
                ? [Slice(face, frontMm - level, rearMm - level), Slice(face, level, level)]
                : [Slice(face, frontMm, rearMm)]
        );
        return
        [
            .. _passes
                .Select(pass => pass is FlatSlice slice && slice.Face == face ? slices.Dequeue() : pass)
                .Where(pass => pass is not FlatSlice { FrontDepthMm: 0, RearDepthMm: 0 }),
        ];
    }

    private static FlatSlice Slice(Site face, double frontMm, double rearMm) =>
        new(face) { FrontDepthMm = frontMm, RearDepthMm = rearMm };
}
