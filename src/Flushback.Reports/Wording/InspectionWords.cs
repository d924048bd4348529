using System.Globalization;
using Flushback.Dxf;
using Flushback.Inspection;

namespace Flushback.Reports.Wording;

/// <summary>Verdicts of an inspection in a shop's words.</summary>
internal static class InspectionWords
{
    /// <summary>The verdict on the whole drawing in one line.</summary>
    public static string VerdictOn(InspectionReport report)
    {
        int faults = report.Findings.Count(finding => finding.Severity == Severity.Fault);
        int warnings = report.Findings.Count(finding => finding.Severity == Severity.Warning);
        return (faults, warnings) switch
        {
            (0, 0) => "Ready to cut: nothing above a note was found.",
            (0, _) => $"Can be cut, but not as well as it should: {Counted(warnings, "warning")}.",
            (_, 0) => $"Cannot be cut as drawn: {Counted(faults, "fault")}.",
            _ => $"Cannot be cut as drawn: {Counted(faults, "fault")} and {Counted(warnings, "warning")}.",
        };
    }

    /// <summary>How much a finding matters, in lower case.</summary>
    public static string Of(Severity severity) =>
        severity switch
        {
            Severity.Fault => "fault",
            Severity.Warning => "warning",
            _ => "note",
        };

    /// <summary>A unit of a drawing in words, such as <c>survey feet</c>.</summary>
    public static string Of(DrawingUnit unit)
    {
        if (unit == DrawingUnit.Thou)
        {
            return "thousandths of an inch";
        }

        string word = string.Concat(unit.ToString().Select((c, i) => i > 0 && char.IsUpper(c) ? $" {c}" : $"{c}"))
            .ToLowerInvariant();
        return word switch
        {
            _ when word.EndsWith("foot", StringComparison.Ordinal) => word[..^4] + "feet",
            _ when word.EndsWith("inch", StringComparison.Ordinal) => word + "es",
            _ => word + "s",
        };
    }

    /// <summary>A number of things: <c>1 part</c>, <c>3 parts</c>.</summary>
    public static string Counted(int count, string noun) =>
        string.Create(CultureInfo.InvariantCulture, $"{count} {noun}") + (count == 1 ? "" : "s");
}
