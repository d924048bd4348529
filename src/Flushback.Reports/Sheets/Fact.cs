namespace Flushback.Reports.Sheets;

/// <summary>A labelled value, with what was wanted and whether it falls short.</summary>
internal sealed record Fact(string Label, string Value, string? Wanted = null, bool FallsShort = false);
