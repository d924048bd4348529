using Flushback.Mechanism.Handle;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>What a little more of a dimension changes, in words.</summary>
internal sealed record SensitivityRow(string Name, bool IsThou, string Pull, string Stress, string Lift)
{
    /// <summary>Two rows a dimension: for a tenth of a millimetre, and for a thousandth of an inch.</summary>
    public static IReadOnlyList<SensitivityRow> AllOf(HandleReport report, Measure measure) =>
        [
            .. report
                .Sensitivities.Where(row => row.Of != Dimension.StiffNose)
                .SelectMany(row => (SensitivityRow[])[ForATenth(row, measure), ForAThou(row, measure)]),
        ];

    private static SensitivityRow ForATenth(Sensitivity row, Measure measure) =>
        new(
            $"{NameOf(row.Of)} by 0.1 mm",
            IsThou: false,
            measure.Change(row.PullNPerMm * 0.1, 2),
            measure.Change(row.StressMpaPerMm * 0.1, 1),
            $"{measure.Change(row.LiftPerMm * 0.1, 3)} mm"
        );

    // The lift's is a ratio of lengths: as many thou for a thou as millimetres for a millimetre.
    private static SensitivityRow ForAThou(Sensitivity row, Measure measure) =>
        new(
            "by 1 thou",
            IsThou: true,
            measure.Change(row.PullNPerMm * Measure.MmPerThou, 2),
            measure.Change(row.StressMpaPerMm * Measure.MmPerThou, 1),
            $"{measure.Change(row.LiftPerMm, 2)} thou"
        );

    private static string NameOf(Dimension dimension) =>
        dimension switch
        {
            Dimension.SpringDepth => "spring deeper",
            Dimension.SpringWidth => "spring wider",
            Dimension.Preload => "more preload",
            _ => "centre pin forward",
        };
}
