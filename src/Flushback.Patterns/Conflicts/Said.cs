namespace Flushback.Patterns.Conflicts;

/// <summary>Numbers as conflicts say them.</summary>
internal static class Said
{
    private const double MmPerInch = 25.4;

    /// <summary>A length in millimetres and inches.</summary>
    public static string Length(double mm) => FormattableString.Invariant($"{mm:0.00} mm ({mm / MmPerInch:0.000} in)");

    /// <summary>An angle in degrees.</summary>
    public static string Degrees(double degrees) => FormattableString.Invariant($"{degrees:0.##} degrees");
}
