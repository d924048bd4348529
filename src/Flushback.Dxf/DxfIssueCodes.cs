namespace Flushback.Dxf;

/// <summary>The stable codes of <see cref="DxfIssue.Code"/>.</summary>
public static class DxfIssueCodes
{
    /// <summary>The file holds no bytes.</summary>
    public const string Empty = "DXF_EMPTY";

    /// <summary>The bytes are something else: a DWG, an image, plain text.</summary>
    public const string NotDxf = "DXF_NOT_DXF";

    /// <summary>The bytes are text in an encoding that no DXF has, such as UTF-16.</summary>
    public const string FormUnsupported = "DXF_FORM_UNSUPPORTED";

    /// <summary>The file ends in the middle.</summary>
    public const string Truncated = "DXF_TRUNCATED";

    /// <summary>The EOF mark is missing, or bytes follow it.</summary>
    public const string EndOfFile = "DXF_END_OF_FILE";

    /// <summary>A group code is no whole number, or a section is out of order.</summary>
    public const string Structure = "DXF_STRUCTURE";

    /// <summary>A number is damaged, infinite or not a number.</summary>
    public const string Number = "DXF_NUMBER";

    /// <summary>A coordinate lies farther out than the limit.</summary>
    public const string CoordinateRange = "DXF_COORDINATE_RANGE";

    /// <summary>The drawing has more of something than the limit.</summary>
    public const string TooLarge = "DXF_TOO_LARGE";

    /// <summary>The drawing does not say its unit.</summary>
    public const string UnitMissing = "DXF_UNIT_MISSING";

    /// <summary>The unit comes from <c>$MEASUREMENT</c>, which only tells inch from metric.</summary>
    public const string UnitFromMeasurement = "DXF_UNIT_FROM_MEASUREMENT";

    /// <summary>The caller's unit overrides another one stated in the file.</summary>
    public const string UnitOverridden = "DXF_UNIT_OVERRIDDEN";

    /// <summary>The drawing is of a size that suits another unit than the one it was read in.</summary>
    public const string UnitDoubtful = "DXF_UNIT_DOUBTFUL";

    /// <summary>An entity is newer than the version the file says it has.</summary>
    public const string EntityNewer = "DXF_ENTITY_NEWER";

    /// <summary>Entities without outline geometry (text, dimensions, hatches) were left out.</summary>
    public const string EntityIgnored = "DXF_ENTITY_IGNORED";

    /// <summary>An entity carries geometry that this version cannot read.</summary>
    public const string EntityUnreadable = "DXF_ENTITY_UNREADABLE";

    /// <summary>An entity lacks a value, or its values make no shape (zero radius, bulge between equal points).</summary>
    public const string EntityInvalid = "DXF_ENTITY_INVALID";

    /// <summary>An entity does not lie flat in the plane of the drawing.</summary>
    public const string EntityNotFlat = "DXF_ENTITY_NOT_FLAT";

    /// <summary>Splines or ellipses became lines and arcs within the curve tolerance.</summary>
    public const string CurveFitted = "DXF_CURVE_FITTED";

    /// <summary>A block that is placed does not exist, or lives in another file.</summary>
    public const string BlockMissing = "DXF_BLOCK_MISSING";

    /// <summary>A block contains itself.</summary>
    public const string BlockCycle = "DXF_BLOCK_CYCLE";

    /// <summary>An entity could not be replaced because it stands in a block, which may be placed elsewhere too.</summary>
    public const string InBlock = "DXF_IN_BLOCK";

    /// <summary>Something in the file still names an entity that was left out.</summary>
    public const string ReferenceLeft = "DXF_REFERENCE_LEFT";

    /// <summary>Entities in paper space were left out.</summary>
    public const string PaperSpace = "DXF_PAPER_SPACE";

    /// <summary>Entities on layers that are off or frozen, or hidden ones, were left out.</summary>
    public const string LayerHidden = "DXF_LAYER_HIDDEN";

    /// <summary>The drawing has no layer of the name that was asked for.</summary>
    public const string LayerAbsent = "DXF_LAYER_ABSENT";

    /// <summary>An edge of no length was removed.</summary>
    public const string ZeroLength = "DXF_ZERO_LENGTH";

    /// <summary>A second copy of an entity was removed.</summary>
    public const string Duplicate = "DXF_DUPLICATE";

    /// <summary>Two lines, or two arcs of one circle, lay partly on each other and were made one.</summary>
    public const string Overlap = "DXF_OVERLAP";

    /// <summary>Two ends near each other were joined.</summary>
    public const string GapBridged = "DXF_GAP_BRIDGED";

    /// <summary>A chain of entities does not close.</summary>
    public const string OpenChain = "DXF_OPEN_CHAIN";

    /// <summary>More than two ends meet in one point.</summary>
    public const string BranchPoint = "DXF_BRANCH_POINT";
}
