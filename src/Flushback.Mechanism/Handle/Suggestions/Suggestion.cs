namespace Flushback.Mechanism.Handle.Suggestions;

/// <summary>What gives a wanted pull within a stress, one dimension being varied, or why nothing does.</summary>
/// <param name="Of">What was varied.</param>
/// <param name="ValueMm">
/// The value nearest to the present one that gives the pull: the preload, the spring's width, the depth added at its back
/// (negative: taken off), or how far the centre pin goes forward (negative: to the rear). Null when there is none.
/// </param>
/// <param name="PullN">Pull at that value; where there is none, the nearest that can be had within the stress.</param>
/// <param name="PeakStressMpa">Peak stress with that pull.</param>
/// <param name="Sentence">What was found, in one sentence for the maker.</param>
public sealed record Suggestion(Dimension Of, double? ValueMm, double PullN, double PeakStressMpa, string Sentence);
