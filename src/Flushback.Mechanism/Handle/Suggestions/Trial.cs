namespace Flushback.Mechanism.Handle.Suggestions;

/// <summary>What a knife does with one dimension changed.</summary>
/// <param name="ByMm">The change.</param>
/// <param name="PullN">Pull at the nail nick, with friction.</param>
/// <param name="StressMpa">Greatest bending stress over the rotation.</param>
internal readonly record struct Trial(double ByMm, double PullN, double StressMpa);
