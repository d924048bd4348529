using Flushback.Geometry;
using Flushback.Mechanism.Tolerances;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>What each part of a study reads as comma-separated values, a row a part.</summary>
public static class SpreadCsv
{
    private static readonly CsvTable<(int Number, PartReading Part)> _table = new(
        ("part", row => Measure.Plain.Number(row.Number, 0)),
        ("state", row => StateOf(row.Part)),
        ("open_height_mm", row => Length(row.Part, Outcome.OpenHeight)),
        ("half_stop_mm", row => Length(row.Part, Outcome.HalfStopLift)),
        ("closed_mm", row => Length(row.Part, Outcome.ClosedLift)),
        ("open_rests_deg", row => Degrees(row.Part, Outcome.OpenAngle)),
        ("half_stop_rests_deg", row => Degrees(row.Part, Outcome.HalfStopAngle)),
        ("closed_rests_deg", row => Degrees(row.Part, Outcome.ClosedAngle)),
        ("tip_depth_mm", row => Length(row.Part, Outcome.TipDepth))
    );

    /// <summary>Writes the parts; lines end in CR LF, and what a part does not have is an empty field.</summary>
    /// <param name="report">The study.</param>
    /// <param name="cancellation">Looked at once a row.</param>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static string Write(ToleranceReport report, CancellationToken cancellation = default) =>
        _table.Write(report.Parts.Select((part, index) => (index + 1, part)), cancellation);

    private static string StateOf(PartReading part) =>
        !part.IsAssembled ? "not assembled"
        : part.Rests ? "rests"
        : "no rest";

    private static string Length(PartReading part, Outcome outcome) =>
        part.Of(outcome) is { } mm ? CsvTable.Number(mm) : "";

    private static string Degrees(PartReading part, Outcome outcome) =>
        part.Of(outcome) is { } radians ? CsvTable.Number(new Angle(radians).Degrees) : "";
}
