using Flushback.Geometry;

namespace Flushback.Mechanism.Passes;

/// <summary>Why a pass cannot be made.</summary>
/// <param name="Reason">Stable reason; see <see cref="PassReasons"/>.</param>
/// <param name="Sentence">What is wrong, where, and what to do: one sentence for the maker.</param>
/// <param name="At">Where, in the frame of the part (blade open, spring as drawn), when at one place.</param>
public sealed record PassProblem(string Reason, string Sentence, Point? At = null);

/// <summary>The stable reasons for refusing a pass.</summary>
public static class PassReasons
{
    /// <summary>A depth, radius or length that is not above zero.</summary>
    public const string NothingTaken = "NOTHING_TAKEN";

    /// <summary>The pass would add metal.</summary>
    public const string AddsMetal = "ADDS_METAL";

    /// <summary>No such face on this knife, or none this pass works on.</summary>
    public const string UnknownFace = "UNKNOWN_FACE";

    /// <summary>There is no corner to round.</summary>
    public const string NoCorner = "NO_CORNER";

    /// <summary>A face that has to stay would be gone.</summary>
    public const string ConsumesFace = "CONSUMES_FACE";

    /// <summary>A pin's hole would be cut into, or too little metal be left around it.</summary>
    public const string CutsPin = "CUTS_PIN";

    /// <summary>The part would come apart.</summary>
    public const string TwoPieces = "TWO_PIECES";

    /// <summary>The tool does not fit where it is to work.</summary>
    public const string ToolDoesNotFit = "TOOL_DOES_NOT_FIT";

    /// <summary>Shortening the tip was not asked for outright.</summary>
    public const string TipNotAllowed = "TIP_NOT_ALLOWED";
}
