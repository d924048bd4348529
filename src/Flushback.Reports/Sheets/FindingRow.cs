using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Findings;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>One finding in words.</summary>
internal sealed record FindingRow
{
    public required string Severity { get; init; }

    public required string Code { get; init; }

    public required string Message { get; init; }

    public required string Advice { get; init; }

    public required string? Place { get; init; }

    public required string? Found { get; init; }

    public static FindingRow Of(BenchReport report, Finding finding, Measure measure) =>
        new()
        {
            Severity = VerdictWords.Of(finding.Severity),
            Code = finding.Code,
            Message = finding.Message,
            Advice = finding.Advice,
            Place = PlaceOf(report, finding, measure),
            Found = FoundOf(finding, measure),
        };

    private static string? PlaceOf(BenchReport report, Finding finding, Measure measure)
    {
        string? stop = finding.Stop is { } at ? StopNames.At(at) : null;
        string? place = finding.At is { } point
            ? $"{measure.Place(report.Placement.ToDrawing.Apply(point))} in the drawing"
            : null;
        return (stop, place) switch
        {
            (null, null) => null,
            (null, _) => place,
            (_, null) => stop,
            _ => $"{stop}, {place}",
        };
    }

    private static string? FoundOf(Finding finding, Measure measure)
    {
        if (finding.Value is not { } value)
        {
            return null;
        }

        string found = Quantity(value, finding.Unit, measure);
        return finding.Limit is { } limit ? $"{found}; limit {Quantity(limit, finding.Unit, measure)}" : found;
    }

    private static string Quantity(double value, string unit, Measure measure) =>
        unit switch
        {
            "mm" => measure.Length(value),
            "deg" => measure.Degrees(Angle.FromDegrees(value)),
            "N" or "MPa" or "HRC" => $"{measure.Number(value, unit == "N" ? 1 : 0)} {unit}",
            _ => measure.Number(value, value == Math.Floor(value) ? 0 : 2),
        };
}
