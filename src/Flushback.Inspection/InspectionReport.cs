using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Geometry;

namespace Flushback.Inspection;

/// <summary>What the shop gets when it cuts a drawing. Lengths in millimetres in the drawing's own frame.</summary>
public sealed record InspectionReport
{
    /// <summary>The unit the file's coordinates were taken to be in.</summary>
    public required DrawingUnit Unit { get; init; }

    /// <summary>The layers that were taken as cut, as the file spells them.</summary>
    public required ImmutableArray<string> CutLayers { get; init; }

    /// <summary>The parts, in the order of their first entity; each an outer contour with the holes in it.</summary>
    public required ImmutableArray<InspectedPart> Parts { get; init; }

    /// <summary>Chains of entities that do not close.</summary>
    public required ImmutableArray<OpenContour> OpenContours { get; init; }

    /// <summary>Findings, worst first, then in the order of the file.</summary>
    public required ImmutableArray<InspectionFinding> Findings { get; init; }

    /// <summary>What was mended or left aside while reading and joining, each in one sentence.</summary>
    public required ImmutableArray<string> Repairs { get; init; }

    /// <summary>Box around everything on the cut layers; <see cref="Box.Empty"/> for none.</summary>
    public required Box Bounds { get; init; }

    /// <summary>Length of all contours that are cut, as drawn.</summary>
    public required double CutLengthMm { get; init; }

    /// <summary>Where the middle of the kerf runs; empty when no kerf was given.</summary>
    public ImmutableArray<CutPath> CutPaths { get; init; } = [];

    /// <summary>True when nothing above a note was found.</summary>
    public bool IsClean => Findings.All(finding => finding.Severity == Severity.Note);
}

/// <summary>One piece of metal.</summary>
/// <param name="Layer">Layer of its outer contour.</param>
/// <param name="Contour">The outer contour, counter-clockwise.</param>
/// <param name="Handles">Handles (or places) of the outer contour's entities, in order of travel.</param>
/// <param name="Holes">What is cut out of it.</param>
public sealed record InspectedPart(
    string Layer,
    Outline Contour,
    ImmutableArray<string> Handles,
    ImmutableArray<InspectedHole> Holes
)
{
    /// <summary>Area of the metal that remains, in square millimetres.</summary>
    public required double AreaMm2 { get; init; }

    /// <summary>Length of the outer contour and the holes.</summary>
    public required double CutLengthMm { get; init; }

    /// <summary>Thinnest place of metal between two stretches of its contours; null when the part has none to measure.</summary>
    public WebMeasure? ThinnestWeb { get; init; }

    /// <summary>Least radius of the corners and arcs a cutter has to reach into; null when there is no inner corner.</summary>
    public InnerRadius? LeastInnerRadius { get; init; }

    /// <summary>Least stock against the finished outline; null when no finished layer was named or none lies in this part.</summary>
    public StockMeasure? LeastStock { get; init; }
}

/// <summary>A contour cut out of a part.</summary>
/// <param name="Layer">The layer it lies on.</param>
/// <param name="Contour">The contour, counter-clockwise; a circle as two arcs.</param>
/// <param name="Circle">The circle, when it is one.</param>
/// <param name="Handles">Handles (or places) of its entities.</param>
public sealed record InspectedHole(string Layer, Outline Contour, Circle? Circle, ImmutableArray<string> Handles)
{
    /// <summary>The pin it is for and how it fits; null when it is no pin hole.</summary>
    public PinFit? Fit { get; init; }
}

/// <summary>A hole against its pin, by diameters.</summary>
/// <param name="PinMm">Nominal diameter of the pin.</param>
/// <param name="PinName">The pin as shops name it, such as <c>2.4 mm</c> or <c>3/32 in</c>.</param>
/// <param name="LowestMm">Smallest diameter of the hole that fits.</param>
/// <param name="HighestMm">Largest diameter of the hole that fits.</param>
/// <param name="HoleMm">Diameter of the hole as drawn.</param>
public sealed record PinFit(double PinMm, string PinName, double LowestMm, double HighestMm, double HoleMm)
{
    /// <summary>True when the hole as drawn is within the fit.</summary>
    public bool Fits => HoleMm >= LowestMm && HoleMm <= HighestMm;
}

/// <summary>Metal between two nearest points of a part's contours.</summary>
/// <param name="ThicknessMm">Distance across.</param>
/// <param name="From">One side.</param>
/// <param name="To">The other side.</param>
public sealed record WebMeasure(double ThicknessMm, Point From, Point To);

/// <summary>An inner corner or hollow arc.</summary>
/// <param name="RadiusMm">Radius; 0 for a sharp corner.</param>
/// <param name="At">The corner, or the middle of the arc.</param>
/// <param name="Handles">Handles (or places) of the entities there.</param>
public sealed record InnerRadius(double RadiusMm, Point At, ImmutableArray<string> Handles);

/// <summary>Stock between the contour that is cut and the finished one.</summary>
/// <param name="LeastMm">Least distance; negative where the cut lies inside the finished outline.</param>
/// <param name="At">Where it is least, on the finished outline.</param>
public sealed record StockMeasure(double LeastMm, Point At);

/// <summary>A chain that does not close.</summary>
/// <param name="Layer">The layer it lies on.</param>
/// <param name="Handles">Handles (or places) of its entities, in order.</param>
/// <param name="Start">One end.</param>
/// <param name="End">The other end.</param>
/// <param name="LengthMm">Length along it.</param>
public sealed record OpenContour(string Layer, ImmutableArray<string> Handles, Point Start, Point End, double LengthMm)
{
    /// <summary>Its edges from <see cref="Start"/> to <see cref="End"/>, for a picture.</summary>
    public ImmutableArray<Edge> Edges { get; init; } = [];
}

/// <summary>Where the middle of the kerf runs for one contour.</summary>
/// <param name="Layer">The layer of the contour that it cuts.</param>
/// <param name="Path">The path, closed.</param>
/// <param name="IsHole">True for the inside of a hole.</param>
/// <param name="Part">Which of the report's parts it belongs to, from 0.</param>
public sealed record CutPath(string Layer, Outline Path, bool IsHole, int Part);
