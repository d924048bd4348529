namespace Flushback.Patterns.Parameters;

/// <summary>What is known of one number of a pattern: one row of the table that documentation, checks and messages come from.</summary>
public sealed record PatternLimit
{
    /// <summary>Group and field as a file writes them, the unit last: <c>tang.height_mm</c>. Stable.</summary>
    public required string Path { get; init; }

    /// <summary>Its name in a sentence, without an article: <c>tang height</c>.</summary>
    public required string Name { get; init; }

    /// <summary><c>mm</c> or <c>deg</c>.</summary>
    public string Unit => Path.EndsWith("_deg", StringComparison.Ordinal) ? "deg" : "mm";

    /// <summary>Least value allowed.</summary>
    public required double Least { get; init; }

    /// <summary>Greatest value allowed.</summary>
    public required double Most { get; init; }

    /// <summary>What it is, in one sentence.</summary>
    public required string Meaning { get; init; }

    /// <summary>What it follows from when it is left out; null when it has a default of its own.</summary>
    public string? Follows { get; init; }

    /// <summary>The value in a set of parameters; null where it was left out.</summary>
    public required Func<PatternParameters, double?> Read { get; init; }

    /// <summary>The parameters with this value changed; null leaves out a number that <see cref="Follows"/> from others.</summary>
    public required Func<PatternParameters, double?, PatternParameters> Write { get; init; }

    /// <summary>The value of a pattern with nothing changed; null when it follows from others.</summary>
    public double? Default => Read(PatternParameters.Default);

    /// <summary>The part before the point of <see cref="Path"/>: <c>tang</c>.</summary>
    public string Group => Path[..Path.IndexOf('.', StringComparison.Ordinal)];
}
