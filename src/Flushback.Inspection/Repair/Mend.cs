using System.Collections.Immutable;
using Flushback.Dxf.Writing;

namespace Flushback.Inspection.Repair;

/// <summary>Something that is mended as a whole or not at all.</summary>
/// <param name="Replacements">What changes in the file.</param>
/// <param name="Sentences">What that mends, each in one sentence.</param>
internal sealed record Mend(ImmutableArray<DxfReplacement> Replacements, ImmutableArray<string> Sentences);
