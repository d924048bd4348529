using Flushback.Mechanism.Handle;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>A blade angle in the handle, in words.</summary>
internal sealed record HandleSampleRow(
    string BladeAngle,
    string Thou,
    string BenchThou,
    string Force,
    string Closing,
    string Opening,
    string Frictionless,
    string Energy,
    string Stress
)
{
    private const double StepDeg = 15;

    /// <summary>From the open rest to the closed one: both, and the sample nearest to every 15 degrees between.</summary>
    public static IReadOnlyList<HandleSampleRow> AllOf(HandleReport report, Measure measure)
    {
        double last = report.Curve[^1].BladeAngle.Degrees;
        IEnumerable<double> between = Enumerable.Range(1, (int)(180 / StepDeg)).Select(i => i * StepDeg);
        return
        [
            .. between
                .Where(deg => deg < last - (StepDeg / 2))
                .Select(deg => report.Curve.MinBy(sample => Math.Abs(sample.BladeAngle.Degrees - deg)))
                .Prepend(report.Curve[0])
                .Append(report.Curve[^1])
                .Select(sample => Of(sample, measure)),
        ];
    }

    private static HandleSampleRow Of(HandleSample sample, Measure measure) =>
        new(
            measure.DegreesOnly(sample.BladeAngle, 1),
            measure.SignedThou(sample.LiftMm),
            measure.SignedThou(sample.BenchLiftMm),
            measure.Number(sample.ForceN, 0),
            measure.Number(sample.ClosingTorqueNmm, 0),
            measure.Number(sample.OpeningTorqueNmm, 0),
            measure.Number(sample.TorqueNmm, 0),
            measure.Number(sample.EnergyNmm, 0),
            measure.Number(sample.PeakStressMpa, 0)
        );
}
