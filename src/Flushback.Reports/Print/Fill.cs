using Flushback.Geometry;

namespace Flushback.Reports.Print;

/// <summary>How a closed region is filled: with a colour, with a hatch of lines, or with both, the hatch above.</summary>
/// <param name="Colour">The colour; null leaves the paper.</param>
/// <param name="Hatch">The hatch; null for none.</param>
public sealed record Fill(PrintColour? Colour, Hatch? Hatch = null);

/// <summary>Parallel lines across a region.</summary>
/// <param name="Stroke">How each line is drawn.</param>
/// <param name="SpacingMm">From line to line on paper, in millimetres; greater than zero.</param>
/// <param name="Direction">Which way they run, counter-clockwise from the foot of the sheet.</param>
public sealed record Hatch(Stroke Stroke, double SpacingMm, Angle Direction);
