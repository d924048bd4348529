using System.Collections.Immutable;

namespace Flushback.Inspection;

/// <summary>What a shop holds a drawing against. Lengths in millimetres.</summary>
public sealed record InspectionSettings
{
    /// <summary>
    /// Layers that are cut, compared without regard to case; empty for every visible layer with lines, arcs or circles
    /// but those this program draws itself.
    /// </summary>
    public ImmutableArray<string> CutLayers { get; init; } = [];

    /// <summary>Ends no farther apart than this are joined, and the gap is listed.</summary>
    public double JoinToleranceMm { get; init; } = 0.01;

    /// <summary>Segments shorter than this are listed: a controller stutters on them.</summary>
    public double MicroSegmentMm { get; init; } = 0.02;

    /// <summary>Contours whose box is smaller than this both ways are listed as dirt.</summary>
    public double TinyFeatureMm { get; init; } = 0.3;

    /// <summary>Diameter of the cutter, wire or jet that has to reach into corners; null when none is asked about.</summary>
    public double? CutterDiameterMm { get; init; }

    /// <summary>Webs thinner than this are listed.</summary>
    public double LeastWebMm { get; init; } = 0.8;

    /// <summary>
    /// Pins that the holes are for, by diameter; empty to take for each hole the nearest of the usual pins
    /// (1.6, 2.4, 3.2 mm; 1/16, 3/32, 1/8 in).
    /// </summary>
    public ImmutableArray<double> PinDiametersMm { get; init; } = [];

    /// <summary>True when holes are drawn small, to be reamed to the fit after cutting.</summary>
    public bool HolesAreReamed { get; init; }

    /// <summary>Width of the kerf; null when no cut path is asked for.</summary>
    public double? KerfMm { get; init; }

    /// <summary>Stock that is left on the profile of each part for grinding after heat treatment.</summary>
    public double? GrindingStockMm { get; init; }

    /// <summary>
    /// Layer with the finished outlines, when the drawing holds them beside the ones to cut: the stock between the two
    /// is measured.
    /// </summary>
    public string? FinishedLayer { get; init; }
}
