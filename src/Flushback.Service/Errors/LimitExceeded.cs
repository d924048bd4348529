namespace Flushback.Service.Errors;

/// <summary>An amount over its limit.</summary>
/// <param name="Reason">Stable reason in UPPER_SNAKE, such as <c>TOO_MANY_VERTICES</c>.</param>
/// <param name="Name">Name of the limit as in the configuration, such as <c>Vertices</c>.</param>
/// <param name="Allowed">The limit; null when only the sentence tells.</param>
/// <param name="Value">What was asked for; null when it was not measured to its end.</param>
/// <param name="Sentence">What is too much, how much is allowed, and what to do: one sentence.</param>
public sealed record LimitExceeded(string Reason, string Name, double? Allowed, double? Value, string Sentence);
