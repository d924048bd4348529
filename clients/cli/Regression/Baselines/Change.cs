namespace Flushback.Cli.Regression.Baselines;

/// <summary>One thing that is not as in the baseline.</summary>
/// <param name="Name">What it is about.</param>
/// <param name="Was">What the baseline says; null when it says nothing of it.</param>
/// <param name="Is">What it is now; null when it is not there any more.</param>
/// <param name="Sentence">Both, and by how much, in words.</param>
/// <param name="At">Where an outline is off most, in the drawing, in millimetres; null for anything else.</param>
internal sealed record Change(string Name, string? Was, string? Is, string Sentence, (double X, double Y)? At = null);
