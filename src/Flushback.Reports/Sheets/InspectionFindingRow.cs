using System.Collections.Immutable;
using System.Globalization;
using Flushback.Inspection;
using Flushback.Reports.Wording;

namespace Flushback.Reports.Sheets;

/// <summary>One finding of an inspection in words.</summary>
internal sealed record InspectionFindingRow
{
    // A duplicate of a whole drawing names hundreds; the JSON has them all.
    private const int MostHandles = 12;

    public required string Number { get; init; }

    public required string Severity { get; init; }

    public required string Code { get; init; }

    public required string Message { get; init; }

    public required string Advice { get; init; }

    public required string? Layer { get; init; }

    public required string? Entities { get; init; }

    public required string? Place { get; init; }

    public required string? Found { get; init; }

    public static InspectionFindingRow Of(InspectionFinding finding, int number, Measure measure) =>
        new()
        {
            Number = number.ToString(CultureInfo.InvariantCulture),
            Severity = InspectionWords.Of(finding.Severity),
            Code = finding.Code,
            Message = Printable.Of(finding.Message),
            Advice = Printable.Of(finding.Advice),
            Layer = Printable.Of(finding.Layer) is { Length: > 0 } layer ? layer : null,
            Entities = EntitiesOf(finding.Handles),
            Place = finding.At is { } at ? measure.PlaceInBoth(at) : null,
            Found = FoundOf(finding, measure),
        };

    private static string? EntitiesOf(ImmutableArray<string> handles)
    {
        if (handles.IsEmpty)
        {
            return null;
        }

        string listed = string.Join(", ", handles.Take(MostHandles).Select(Printable.Of));
        int left = handles.Length - MostHandles;
        return left > 0 ? string.Create(CultureInfo.InvariantCulture, $"{listed} and {left} more") : listed;
    }

    private static string? FoundOf(InspectionFinding finding, Measure measure)
    {
        if (finding.Value is not { } value)
        {
            return null;
        }

        string found = Quantity(value, finding.Unit, measure);
        return finding.Limit is { } limit ? $"{found}; limit {Quantity(limit, finding.Unit, measure)}" : found;
    }

    private static string Quantity(double value, string unit, Measure measure) =>
        unit == "mm" ? measure.Length(value) : measure.Number(value, value == Math.Floor(value) ? 0 : 2);
}
