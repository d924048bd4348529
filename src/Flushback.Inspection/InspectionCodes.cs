namespace Flushback.Inspection;

/// <summary>The stable codes of <see cref="InspectionFinding.Code"/>.</summary>
public static class InspectionCodes
{
    /// <summary>A contour does not close.</summary>
    public const string OpenContour = "OPEN_CONTOUR";

    /// <summary>Ends near each other that do not meet.</summary>
    public const string Gap = "GAP";

    /// <summary>More than two ends meet in one point.</summary>
    public const string BranchPoint = "BRANCH_POINT";

    /// <summary>An edge of no length.</summary>
    public const string ZeroLength = "ZERO_LENGTH";

    /// <summary>An edge too short for a controller to follow smoothly.</summary>
    public const string MicroSegment = "MICRO_SEGMENT";

    /// <summary>A second copy of an entity.</summary>
    public const string Duplicate = "DUPLICATE";

    /// <summary>Two entities lie partly on each other.</summary>
    public const string Overlap = "OVERLAP";

    /// <summary>A contour crosses itself.</summary>
    public const string SelfCrossing = "SELF_CROSSING";

    /// <summary>Two contours cross each other.</summary>
    public const string ContoursCross = "CONTOURS_CROSS";

    /// <summary>A contour lies within a hole, as a part or as dirt.</summary>
    public const string NestedWrongly = "NESTED_WRONGLY";

    /// <summary>More than one part on a cut layer.</summary>
    public const string SeveralParts = "SEVERAL_PARTS";

    /// <summary>Text, dimensions or the like on a cut layer.</summary>
    public const string NotForCutting = "NOT_FOR_CUTTING";

    /// <summary>Splines or ellipses, which many controllers cannot follow.</summary>
    public const string CurveLeft = "CURVE_LEFT";

    /// <summary>An entity that cannot be read lies on a cut layer.</summary>
    public const string Unreadable = "UNREADABLE";

    /// <summary>A contour too small to be meant.</summary>
    public const string TinyFeature = "TINY_FEATURE";

    /// <summary>Short lines that stand for an arc or a circle.</summary>
    public const string PolygonForArc = "POLYGON_FOR_ARC";

    /// <summary>An inner corner or arc that the cutter cannot reach into.</summary>
    public const string InnerRadius = "INNER_RADIUS";

    /// <summary>Metal thinner than the limit between two contours or two sides of one.</summary>
    public const string ThinWeb = "THIN_WEB";

    /// <summary>A hole that does not fit its pin.</summary>
    public const string HoleFit = "HOLE_FIT";

    /// <summary>A hole that lies between an inch and a metric pin and fits neither as drawn.</summary>
    public const string PinUnclear = "PIN_UNCLEAR";

    /// <summary>Too little stock for grinding after heat treatment, or none.</summary>
    public const string Stock = "STOCK";

    /// <summary>The kerf swallows a contour or part of one.</summary>
    public const string KerfTooWide = "KERF_TOO_WIDE";

    /// <summary>A contour of which it cannot be told whether the kerf runs inside or outside.</summary>
    public const string SideUnknown = "SIDE_UNKNOWN";

    /// <summary>The size suggests that the drawing is in another unit.</summary>
    public const string ImplausibleUnit = "IMPLAUSIBLE_UNIT";

    /// <summary>The unit was guessed, since neither the file nor the caller says it.</summary>
    public const string UnitGuessed = "UNIT_GUESSED";

    /// <summary>Nothing that can be cut.</summary>
    public const string NothingToCut = "NOTHING_TO_CUT";
}
