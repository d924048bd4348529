using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Measured;
using Flushback.Mechanism.Measured.Solving;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>What else than a pass would bring a stop that reads low to its target: one change of the knife as the plan leaves it.</summary>
/// <remarks>
/// The amounts are found on the knife itself, by making the change and reading again, so they hold where the first order
/// does not. What the change does to the other stops is not made good, but open has to stay in its window.
/// </remarks>
/// <param name="trial">The knife as the plan leaves it.</param>
/// <param name="open">Where it may rest open.</param>
/// <param name="settings">What is to be reached.</param>
/// <param name="stop">The stop that reads low.</param>
internal sealed class Remedies(PlanTrial trial, AngleWindow open, PlanSettings settings, Stop stop)
{
    // A change beyond this is another knife.
    private const double MostMm = 3;

    // A spring with more off its nose than this is a weaker one.
    private const double MostOffNoseMm = 1;

    private const double EnoughMm = 1e-4;

    /// <summary>The shortest move of the pivot's hole in the blade by which the reading rises enough; null when none does.</summary>
    public Vector? PivotMoveMm()
    {
        Vector gain = MoveGain();
        return gain.Length > 0 && Amount(mm => PivotMoved(gain.Normalized * mm)) is { } far
            ? gain.Normalized * far
            : null;
    }

    /// <summary>How much prouder the face that serves the stop would have to stand; null when that does not help.</summary>
    public double? ProuderFaceMm()
    {
        BladeFace face = stop == Stop.HalfStop ? BladeFace.HalfStopFace : BladeFace.ClosedFace;
        return DepthPlaces.Of(trial.Knife, trial.Readings, Site.On(face)) is { } places
            ? Amount(mm => FaceShift.Of(trial.Knife, places, new FaceOffset(face, mm, mm)))
            : null;
    }

    /// <summary>How much thinner the spring's nose would have to be at the rear of its pad, and not in front; null when that does not help.</summary>
    /// <remarks>
    /// Open, half stop and closed bear on one underside: taken down level or in front it drops all three by about as much, or
    /// open less. At the rear it drops open more where the shoulder holds the blade, which then bears on its open corner alone.
    /// </remarks>
    public double? ThinnerNoseMm()
    {
        Knife? Thinned(double mm)
        {
            LowerNose pass = new() { FrontDepthMm = 0, RearDepthMm = mm };
            return PassCut.Make(trial.Knife, trial.Readings, pass, settings.Simulation.Passes).Result?.Knife;
        }

        return Amount(Thinned, MostOffNoseMm);
    }

    /// <summary>The pivot stays at the origin of the knife frame: the blade goes the other way about it.</summary>
    private Knife PivotMoved(Vector by) =>
        trial.Knife with
        {
            Blade = trial.Knife.Blade.Transformed(new RigidMotion(Angle.Zero, -by)),
        };

    /// <summary>Rise of the reading for a move of the hole to the front and towards the spine, to first order.</summary>
    private Vector MoveGain()
    {
        Vector Gradient(StopReading at)
        {
            RigidMotion turned = Knife.BladeAt(at.RestAngle);
            return RestGradient.Of(trial.Knife, at) is { } gradient
                ? new Vector(
                    gradient.Change((_, normal, _) => turned.Apply(new Vector(1, 0)).Dot(normal)).LiftMm,
                    gradient.Change((_, normal, _) => turned.Apply(new Vector(0, 1)).Dot(normal)).LiftMm
                )
                : default;
        }

        return Gradient(trial.Readings.At(stop)!) - Gradient(trial.Readings.Stops[0]);
    }

    /// <summary>The amount of a change with which the stop reads what it should; null when there is none.</summary>
    private double? Amount(Func<double, Knife?> changed, double mostMm = MostMm)
    {
        double aim = settings.AimMm(stop);
        StopReadings readings = trial.Readings;
        double? Off(double mm)
        {
            if (changed(mm) is not { } knife)
            {
                return null;
            }

            readings = StopCheck.Run(knife, settings.Simulation.Bench).Readings;
            return readings.At(stop) is { Rests: true } reading ? reading.LiftMm - aim : null;
        }

        double? amount = ChangeAmount.Find(trial.Readings.At(stop)!.LiftMm - aim, Off, EnoughMm, mostMm);
        return open.Contains(readings.Stops[0].RestAngle) ? amount : null;
    }
}
