using Flushback.Geometry;
using Flushback.Mechanism.Bench;

namespace Flushback.Mechanism.Findings;

/// <summary>How much a finding matters.</summary>
public enum Severity
{
    /// <summary>Good to know; does not change the verdict.</summary>
    Note,

    /// <summary>The knife will work less well than it should.</summary>
    Warning,

    /// <summary>The knife will not work as drawn.</summary>
    Fault,
}

/// <summary>Something the maker should know.</summary>
/// <param name="Code">Stable code; see <see cref="FindingCodes"/>.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Message">What is the matter, in one sentence.</param>
/// <param name="Advice">What to do, in one sentence.</param>
/// <param name="Stop">At which stop, if at one.</param>
/// <param name="At">Where, in the knife frame with the blade at that stop, if at one place.</param>
/// <param name="Value">The value found, in <paramref name="Unit"/>.</param>
/// <param name="Limit">The limit it was held against, in <paramref name="Unit"/>.</param>
/// <param name="Unit">"mm", "deg", "N", "MPa", "HRC" or "" for a count.</param>
public sealed record Finding(
    string Code,
    Severity Severity,
    string Message,
    string Advice,
    Stop? Stop = null,
    Point? At = null,
    double? Value = null,
    double? Limit = null,
    string Unit = ""
);

/// <summary>The stable codes of findings.</summary>
public static class FindingCodes
{
    /// <summary>A reading above its window.</summary>
    public const string ReadingHigh = "READING_HIGH";

    /// <summary>A reading below its window.</summary>
    public const string ReadingLow = "READING_LOW";

    /// <summary>The blade does not rest at a stop it should have.</summary>
    public const string NoRest = "NO_REST";

    /// <summary>The blade rests too far from the nominal angle.</summary>
    public const string RestAngleOff = "REST_ANGLE_OFF";

    /// <summary>A stop stands on one point.</summary>
    public const string SingleContact = "SINGLE_CONTACT";

    /// <summary>A stop stands on three points or more.</summary>
    public const string ManyContacts = "MANY_CONTACTS";

    /// <summary>A flat lies on a flat.</summary>
    public const string FaceContact = "FACE_CONTACT";

    /// <summary>The contacts of a stop lie too close together.</summary>
    public const string ContactsClose = "CONTACTS_CLOSE";

    /// <summary>The nose touches, or nearly touches, the notch's inner corner.</summary>
    public const string CornerTouching = "CORNER_TOUCHING";

    /// <summary>The edge comes too near to the spring.</summary>
    public const string EdgeNearSpring = "EDGE_NEAR_SPRING";

    /// <summary>The tip does not lie deep enough in the handle.</summary>
    public const string TipProud = "TIP_PROUD";

    /// <summary>The blade meets the spring behind the centre pin.</summary>
    public const string TailContact = "TAIL_CONTACT";

    /// <summary>Less stock to trim at the front of the spring's back than behind.</summary>
    public const string StockOrder = "STOCK_ORDER";

    /// <summary>Blade and spring overlap as drawn.</summary>
    public const string DrawnOverlap = "DRAWN_OVERLAP";

    /// <summary>The open flat alone holds the blade, before the shoulder butts on the end face.</summary>
    public const string OpenBeforeShoulder = "OPEN_BEFORE_SHOULDER";

    /// <summary>No handle outline was given, so the tip's depth is not known.</summary>
    public const string NoHandle = "NO_HANDLE";

    /// <summary>Two blades in one handle come too near to each other.</summary>
    public const string BladesNear = "BLADES_NEAR";

    /// <summary>In the handle the spring is bent beyond what it bears.</summary>
    public const string SpringTakesSet = "SPRING_TAKES_SET";

    /// <summary>In the handle the spring is bent so far that it tires early.</summary>
    public const string SpringTires = "SPRING_TIRES";

    /// <summary>The strength of the spring's steel is not known at its hardness.</summary>
    public const string StrengthUnknown = "STRENGTH_UNKNOWN";

    /// <summary>The blade is hard to open.</summary>
    public const string PullHeavy = "PULL_HEAVY";

    /// <summary>The blade opens too easily to be held.</summary>
    public const string PullLight = "PULL_LIGHT";

    /// <summary>Blade and spring are not of the usual pair of hardnesses.</summary>
    public const string HardnessPair = "HARDNESS_PAIR";

    /// <summary>A contact in the handle is pressed until the softer part yields.</summary>
    public const string ContactYields = "CONTACT_YIELDS";

    /// <summary>The blade does not rest at a stop in the handle.</summary>
    public const string HandleNoRest = "HANDLE_NO_REST";
}
