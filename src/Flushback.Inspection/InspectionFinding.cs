using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Inspection;

/// <summary>How much a finding matters to the shop.</summary>
public enum Severity
{
    /// <summary>Good to know.</summary>
    Note,

    /// <summary>It can be cut, but not as well as it should.</summary>
    Warning,

    /// <summary>It cannot be cut as drawn.</summary>
    Fault,
}

/// <summary>Something the shop should know about a drawing.</summary>
/// <param name="Code">Stable code; see <see cref="InspectionCodes"/>.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Message">What is the matter and where, in one sentence, lengths in mm and inches.</param>
/// <param name="Advice">What to do, in one sentence.</param>
/// <param name="Handles">Handles of the entities concerned; where the file gives none, their places such as <c>line 120</c>.</param>
/// <param name="Layer">The layer it lies on; empty when it concerns the whole drawing.</param>
/// <param name="At">Where, in millimetres in the drawing's own frame; null when nowhere in particular.</param>
/// <param name="Value">The value found, in <paramref name="Unit"/>; null when there is none.</param>
/// <param name="Limit">The limit it was held against, in <paramref name="Unit"/>; null when there is none.</param>
/// <param name="Unit"><c>mm</c>, or empty for a count.</param>
public sealed record InspectionFinding(
    string Code,
    Severity Severity,
    string Message,
    string Advice,
    ImmutableArray<string> Handles,
    string Layer = "",
    Point? At = null,
    double? Value = null,
    double? Limit = null,
    string Unit = ""
);
