namespace Flushback.Service.Errors;

/// <summary>One thing wrong with a request.</summary>
/// <param name="Field">Path of the field in the contract, such as <c>knife.outlines.blade.vertices[12].x_mm</c>.</param>
/// <param name="Reason">Stable reason in UPPER_SNAKE, such as <c>NOT_FINITE</c>.</param>
/// <param name="Sentence">What is wrong, where, and what to do: one sentence.</param>
public readonly record struct Violation(string Field, string Reason, string Sentence);
