using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>A stretch of the rotation and the pair that carries it; its letter is the one under the chart.</summary>
internal sealed record CarriedRow(string Letter, string From, string To, string Pair)
{
    public static IReadOnlyList<CarriedRow> Of(BenchReport report, Measure measure) =>
        [
            .. report.Curve.Intervals.Select(
                (interval, index) =>
                    new CarriedRow(
                        LetterOf(index),
                        measure.Degrees(interval.From, 1),
                        measure.Degrees(interval.To, 1),
                        FaceNames.Of(interval.BladeFace, interval.SpringFace)
                    )
            ),
        ];

    /// <summary>A to Z, then AA, AB and so on.</summary>
    public static string LetterOf(int index) =>
        index < 26 ? ((char)('A' + index)).ToString() : LetterOf((index / 26) - 1) + LetterOf(index % 26);
}
