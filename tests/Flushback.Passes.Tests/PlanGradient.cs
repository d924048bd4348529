using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Plans;
using Flushback.Mechanism.Plans.Solving;

namespace Flushback.Passes.Tests;

/// <summary>Gradients of a plan against what the real knife does when a face is cut a little deeper or less deep.</summary>
internal static class PlanGradient
{
    private const double StepMm = 2e-5;

    /// <summary>How far the model of a face at a plan's amounts is from the differences of the knife itself.</summary>
    /// <remarks>Nothing where contacts change within the step: there the differences on either side disagree.</remarks>
    public static IEnumerable<(Stop Stop, string Of, double Model, double Differences)> At(PlanReport plan)
    {
        Knife knife = plan.Simulation.Start.Placement.Knife;
        StopReadings start = plan.Simulation.Start.Readings;
        PlanSearch search = PlanSearch.Run(knife, start, plan.Settings, CancellationToken.None);
        foreach (StopReading reading in search.Trial.Readings.Stops.Skip(1))
        {
            Stop stop = reading.Stop;
            FaceDepths at = search.Amounts.At(stop);
            if (
                at.IsNothing
                || FaceModel.Of(search.Trial, reading, at, search.Windows[stop], otherPrice: 0) is not { } model
            )
            {
                continue;
            }

            foreach (bool front in new[] { true, false })
            {
                FaceDepths Deeper(double mm) =>
                    front ? at with { FrontMm = at.FrontMm + mm } : at with { RearMm = at.RearMm + mm };
                if ((front ? at.FrontMm : at.RearMm) < PlanTrial.NothingMm + StepMm)
                {
                    continue;
                }

                (double Lift, double Angle, double Area) Read(double mm)
                {
                    PlanTrial trial = search.TrialOf(search.Amounts.With(stop, Deeper(mm)));
                    StopReading read = trial.Readings.At(stop)!;
                    return (read.LiftMm, read.RestAngle.Radians, knife.Blade.AreaMm2 - trial.Knife.Blade.AreaMm2);
                }

                var (less, here, more) = (Read(-StepMm), Read(0), Read(StepMm));
                string place = front ? "front" : "rear";
                foreach (
                    (string of, double slope, double a, double b, double c) in new[]
                    {
                        ("lift", front ? model.Lift.Front : model.Lift.Rear, less.Lift, here.Lift, more.Lift),
                        ("turn", front ? model.Turn.Front : model.Turn.Rear, less.Angle, here.Angle, more.Angle),
                        ("area", front ? model.Area.Front : model.Area.Rear, less.Area, here.Area, more.Area),
                    }
                )
                {
                    bool isSmooth = Math.Abs(a + c - (2 * b)) < 1e-3 * StepMm;
                    if (isSmooth)
                    {
                        yield return (stop, $"{of} by the {place}", slope, (c - a) / (2 * StepMm));
                    }
                }
            }
        }
    }
}
