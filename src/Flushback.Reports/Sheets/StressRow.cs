using Flushback.Mechanism.Handle;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>The bending stress at a place along the spring, in words.</summary>
internal sealed record StressRow(string BehindPivot, string Open, string Peak)
{
    private const double StepMm = 10;

    /// <summary>From the stiff nose to the rear pin every 10 mm, and where the stress is greatest.</summary>
    public static IReadOnlyList<StressRow> AllOf(HandleReport report, Measure measure) =>
        [
            .. report
                .StressAlong.GroupBy(place => Math.Round(place.XMm / StepMm))
                .Select(near => near.MinBy(place => Math.Abs(place.XMm - (near.Key * StepMm))))
                .Append(report.StressAlong.MaxBy(place => Math.Abs(place.PeakMpa)))
                .Distinct()
                .OrderByDescending(place => place.XMm)
                .Select(place => new StressRow(
                    measure.Mm(-place.XMm, 1),
                    measure.Number(place.OpenMpa, 0),
                    measure.Number(place.PeakMpa, 0)
                )),
        ];
}
