using Flushback.Mechanism.Handle;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>The curve in the handle as comma-separated values, a row a blade angle from the open rest to the closed one.</summary>
public static class HandleCurveCsv
{
    private static readonly CsvTable<HandleSample> _table = new(
        ("blade_angle_deg", sample => CsvTable.Number(sample.BladeAngle.Degrees)),
        ("bench_lift_mm", sample => CsvTable.Number(sample.BenchLiftMm)),
        ("bench_lift_thou", sample => CsvTable.Number(sample.BenchLiftMm / Measure.MmPerThou)),
        ("handle_lift_mm", sample => CsvTable.Number(sample.LiftMm)),
        ("handle_lift_thou", sample => CsvTable.Number(sample.LiftMm / Measure.MmPerThou)),
        ("contact_force_n", sample => CsvTable.Number(sample.ForceN)),
        ("torque_nmm", sample => CsvTable.Number(sample.TorqueNmm)),
        ("closing_torque_nmm", sample => CsvTable.Number(sample.ClosingTorqueNmm)),
        ("opening_torque_nmm", sample => CsvTable.Number(sample.OpeningTorqueNmm)),
        ("strain_energy_nmm", sample => CsvTable.Number(sample.EnergyNmm)),
        ("peak_stress_mpa", sample => CsvTable.Number(sample.PeakStressMpa))
    );

    /// <summary>Writes the curve; lines end in CR LF.</summary>
    public static string Write(HandleReport report) => _table.Write(report.Curve);
}
