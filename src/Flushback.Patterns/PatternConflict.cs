using System.Collections.Immutable;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns;

/// <summary>Why a set of parameters gives no knife.</summary>
/// <param name="Sentence">One sentence: which parameters are in conflict, by how much, and what to change.</param>
/// <param name="Parameters">Paths of those parameters, as in <see cref="PatternLimit.Path"/>.</param>
public sealed record PatternConflict(string Sentence, ImmutableArray<string> Parameters);
