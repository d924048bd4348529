using System.Text;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>The lift curve as comma-separated values: RFC 4180, a header with units, a row a blade angle.</summary>
/// <remarks>Fields are numbers and the trade's words for faces; none holds a comma, a quote or a line end, so none is quoted.</remarks>
public static class LiftCurveCsv
{
    // A nanometre and a millionth of a degree: more than any dial shows, less than rounding leaves.
    private const int Decimals = 6;

    private static readonly (string Head, Func<LiftSample, string> Field)[] Columns =
    [
        ("blade_angle_deg", sample => Number(sample.BladeAngle.Degrees)),
        ("lift_mm", sample => Number(sample.LiftMm)),
        ("lift_thou", sample => Number(sample.LiftMm / Measure.MmPerThou)),
        ("slope_mm_per_deg", sample => Number(sample.SlopeMmPerRad / Angle.DegreesPerRadian)),
        ("spring_rotation_deg", sample => Number(sample.SpringRotation.Degrees)),
        ("blade_face", sample => FaceNames.Of(sample.BladeFace)),
        ("spring_face", sample => FaceNames.Of(sample.SpringFace)),
        ("edge_clearance_mm", sample => Number(sample.EdgeClearanceMm)),
        ("tip_clearance_mm", sample => Number(sample.TipClearanceMm)),
        ("tail_clearance_mm", sample => Number(sample.TailClearanceMm)),
        ("tip_depth_mm", sample => sample.TipDepthMm is { } depth ? Number(depth) : ""),
    ];

    /// <summary>Writes the curve; lines end in CR LF, and a tip depth that is not known is an empty field.</summary>
    public static string Write(BenchReport report)
    {
        var text = new StringBuilder();
        AppendRecord(text, Columns.Select(column => column.Head));
        foreach (LiftSample sample in report.Curve.Samples)
        {
            AppendRecord(text, Columns.Select(column => column.Field(sample)));
        }

        return text.ToString();
    }

    private static void AppendRecord(StringBuilder text, IEnumerable<string> fields) =>
        text.AppendJoin(',', fields).Append("\r\n");

    private static string Number(double value) => Measure.Plain.Number(value, Decimals);
}
