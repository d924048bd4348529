using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>The lift curve as comma-separated values, a row a blade angle.</summary>
public static class LiftCurveCsv
{
    private static readonly CsvTable<LiftSample> _table = new(
        ("blade_angle_deg", sample => CsvTable.Number(sample.BladeAngle.Degrees)),
        ("lift_mm", sample => CsvTable.Number(sample.LiftMm)),
        ("lift_thou", sample => CsvTable.Number(sample.LiftMm / Measure.MmPerThou)),
        ("slope_mm_per_deg", sample => CsvTable.Number(sample.SlopeMmPerRad / Angle.DegreesPerRadian)),
        ("spring_rotation_deg", sample => CsvTable.Number(sample.SpringRotation.Degrees)),
        ("blade_face", sample => FaceNames.Of(sample.BladeFace)),
        ("spring_face", sample => FaceNames.Of(sample.SpringFace)),
        ("edge_clearance_mm", sample => CsvTable.Number(sample.EdgeClearanceMm)),
        ("tip_clearance_mm", sample => CsvTable.Number(sample.TipClearanceMm)),
        ("tail_clearance_mm", sample => CsvTable.Number(sample.TailClearanceMm)),
        ("tip_depth_mm", sample => sample.TipDepthMm is { } depth ? CsvTable.Number(depth) : "")
    );

    /// <summary>Writes the curve; lines end in CR LF, and a tip depth that is not known is an empty field.</summary>
    public static string Write(BenchReport report) => _table.Write(report.Curve.Samples);
}
