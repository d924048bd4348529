namespace Flushback.Catalogue.Designs;

/// <summary>Dimensions of a tang, blade open; knife frame, millimetres and degrees.</summary>
/// <remarks>
/// A face lies at the height of the spring's underside plus its reading from the pivot, so that a straight or hollow
/// face without a tilt and with sharp ends makes the dial show about that reading.
/// </remarks>
public sealed record TangDesign
{
    /// <summary>False for a round tang: an arc about the pivot from the open flat to the closed face.</summary>
    public bool HasHalfStop { get; init; } = true;

    /// <summary>How far the open corner lies below the drawn underside; the spring drops by about as much.</summary>
    public double OpenDropMm { get; init; }

    /// <summary>Slope of the open flat, positive when it rises to the rear, so that the open corner bears.</summary>
    public double OpenTiltDeg { get; init; } = 1;

    /// <summary>Hollow of the open flat.</summary>
    public Relief OpenRelief { get; init; }

    /// <summary>Radius of the open corner.</summary>
    public double OpenCornerRadiusMm { get; init; }

    /// <summary>Wanted reading at the half stop.</summary>
    public double HalfStopReadingMm { get; init; } = 0.127;

    /// <summary>Turn of the half-stop face about its foot, positive clockwise: the blade rests that much earlier.</summary>
    public double HalfStopTiltDeg { get; init; }

    /// <summary>Hollow of the half-stop face.</summary>
    public Relief HalfStopRelief { get; init; } = new(0.08);

    /// <summary>Radius of the closed corner.</summary>
    public double ClosedCornerRadiusMm { get; init; }

    /// <summary>Wanted reading when closed.</summary>
    public double ClosedReadingMm { get; init; } = 0.381;

    /// <summary>Turn of the closed face about its foot, positive clockwise: the blade rests that much earlier.</summary>
    public double ClosedTiltDeg { get; init; }

    /// <summary>Hollow of the closed face.</summary>
    public Relief ClosedRelief { get; init; } = new(0.08);

    /// <summary>How far in front of the pivot the kick lies.</summary>
    public double KickMm { get; init; } = 6.5;

    /// <summary>Radius of the kick.</summary>
    public double KickRadiusMm { get; init; } = 0.4;

    /// <summary>For a round tang: how far behind the pivot the open flat ends.</summary>
    public double RunStartMm { get; init; } = 2.4;
}
