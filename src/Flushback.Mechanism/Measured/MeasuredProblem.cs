namespace Flushback.Mechanism.Measured;

/// <summary>Why readings cannot be explained.</summary>
/// <param name="Reason">Stable reason; see <see cref="MeasuredReasons"/>.</param>
/// <param name="Sentence">What is wrong and what to do: one sentence for the maker.</param>
public sealed record MeasuredProblem(string Reason, string Sentence);

/// <summary>The stable reasons for which readings are refused.</summary>
public static class MeasuredReasons
{
    /// <summary>No reading was given, or one is no number.</summary>
    public const string NothingMeasured = "NOTHING_MEASURED";

    /// <summary>A reading was given at a stop this knife does not have, or does not rest at as drawn.</summary>
    public const string NoSuchStop = "NO_SUCH_STOP";

    /// <summary>No offsets of the faces within the limit make the knife read so.</summary>
    public const string NotExplained = "NOT_EXPLAINED";
}
