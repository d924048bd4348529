using Flushback.Geometry;

namespace Flushback.Catalogue.Designs;

/// <summary>Dimensions of a backspring as it lies when the blade is open; knife frame, millimetres.</summary>
public sealed record SpringDesign
{
    /// <summary>Height of the underside over the pivot at the nose.</summary>
    public double UndersideMm { get; init; } = 4;

    /// <summary>How far the nose's lower corner, were it sharp, lies in front of the pivot.</summary>
    public double ReachMm { get; init; } = 4.2;

    /// <summary>Depth of the spring at its nose, without <see cref="FrontStockMm"/>.</summary>
    public double DepthMm { get; init; } = 3;

    /// <summary>Angle in the metal between underside and end face; below 90 the end face leans back.</summary>
    public double EndFaceDeg { get; init; } = 80;

    /// <summary>Radius of the nose's lower corner.</summary>
    public double NoseRadiusMm { get; init; }

    /// <summary>How far behind the pivot the nose pad ends and the belly begins.</summary>
    public double PadEndMm { get; init; } = 10;

    /// <summary>Hollow of the nose pad itself.</summary>
    public Relief PadRelief { get; init; }

    /// <summary>How deep the belly is hollowed between pad and centre pin.</summary>
    public double BellyMm { get; init; } = 0.5;

    /// <summary>Stock left on the back in front of the centre pin, to be trimmed in fitting.</summary>
    public double FrontStockMm { get; init; }

    /// <summary>The pin the spring rocks on.</summary>
    public Point CentrePin { get; init; } = new(-42, 4.4);

    /// <summary>The pin at the rear end.</summary>
    public Point RearPin { get; init; } = new(-82, 5.6);
}
