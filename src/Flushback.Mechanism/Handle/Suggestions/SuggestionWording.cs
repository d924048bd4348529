using Flushback.Mechanism.Findings;

namespace Flushback.Mechanism.Handle.Suggestions;

/// <summary>What came of a search, in one sentence for the maker.</summary>
/// <param name="range">What was varied.</param>
/// <param name="leastMm">Least change at which the knife was tried.</param>
/// <param name="mostMm">Greatest.</param>
/// <param name="pullN">Wanted pull.</param>
/// <param name="mostStressMpa">Stress not to be passed.</param>
internal sealed class SuggestionWording(
    VariedRange range,
    double leastMm,
    double mostMm,
    double pullN,
    double mostStressMpa
)
{
    /// <summary>A change that gives the pull.</summary>
    public static Suggestion Found(VariedRange range, Trial found) =>
        new(
            range.Of,
            range.ValueAt(found.ByMm),
            found.PullN,
            found.StressMpa,
            FormattableString.Invariant(
                $"With {Of(range, found.ByMm)} the blade takes {Said.Force(found.PullN)} at the nail nick, and the spring bears {found.StressMpa:0} MPa at most."
            )
        );

    /// <summary>The pull is not in the range at all.</summary>
    public Suggestion OutOfReach(Trial nearest) =>
        None(
            nearest,
            $"{Whole()} gives {Said.Force(pullN)} at the nail nick; the nearest{Within()} is {NearestOf(nearest)}."
        );

    /// <summary>The pull is there, with too much stress.</summary>
    public Suggestion OverStress(Trial over, Trial nearest) =>
        None(
            nearest,
            $"A pull of {Said.Force(pullN)} at the nail nick needs {Of(range, over.ByMm)}, which bends the spring to {over.StressMpa:0} MPa, over the {mostStressMpa:0} MPa allowed; the nearest within that is {NearestOf(nearest)}."
        );

    /// <summary>Nothing in the range bears the stress.</summary>
    public Suggestion AllOverStress(Trial least) =>
        None(
            least,
            $"{Whole()} keeps the spring within {mostStressMpa:0} MPa; the least found is {least.StressMpa:0} MPa, with {Of(range, least.ByMm)} and a pull of {Said.Force(least.PullN)}."
        );

    private Suggestion None(Trial nearest, FormattableString sentence) =>
        new(range.Of, null, nearest.PullN, nearest.StressMpa, FormattableString.Invariant(sentence));

    private string Within() =>
        double.IsFinite(mostStressMpa) ? FormattableString.Invariant($" within {mostStressMpa:0} MPa") : "";

    private string NearestOf(Trial trial) =>
        FormattableString.Invariant(
            $"{Said.Force(trial.PullN)} with {Of(range, trial.ByMm)}, at {trial.StressMpa:0} MPa"
        );

    private string Whole() =>
        range.Of switch
        {
            Dimension.Preload => $"No preload from {Value(leastMm)} to {Value(mostMm)}",
            Dimension.SpringWidth => $"No width from {Value(leastMm)} to {Value(mostMm)}",
            Dimension.SpringDepth => $"No spring from {Change(leastMm)} shallower to {Change(mostMm)} deeper",
            _ => $"No centre pin from {Change(leastMm)} farther back to {Change(mostMm)} farther forward",
        };

    private string Value(double byMm) => Said.Length(range.ValueAt(byMm));

    private static string Change(double byMm) => Said.Length(Math.Abs(byMm));

    private static string Of(VariedRange range, double byMm) =>
        range.Of switch
        {
            Dimension.Preload => $"a preload of {Said.Length(range.ValueAt(byMm))}",
            Dimension.SpringWidth => $"a width of {Said.Length(range.ValueAt(byMm))}",
            Dimension.SpringDepth when byMm == 0 => "the spring as deep as it is",
            Dimension.SpringDepth => $"a spring {Change(byMm)} {(byMm < 0 ? "shallower" : "deeper")} at its back",
            _ when byMm == 0 => "the centre pin where it is",
            _ => $"the centre pin {Change(byMm)} farther {(byMm < 0 ? "back" : "forward")}",
        };
}
