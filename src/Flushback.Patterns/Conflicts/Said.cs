namespace Flushback.Patterns.Conflicts;

/// <summary>Numbers as conflicts say them.</summary>
internal static class Said
{
    private const double MmPerInch = 25.4;
    private const double NewtonsPerPound = 4.4482216152605;

    /// <summary>A length in millimetres and inches.</summary>
    public static string Length(double mm) => FormattableString.Invariant($"{mm:0.00} mm ({mm / MmPerInch:0.000} in)");

    /// <summary>A force in newtons and pounds-force.</summary>
    public static string Force(double newtons) =>
        FormattableString.Invariant($"{newtons:0.0} N ({newtons / NewtonsPerPound:0.0} lbf)");

    /// <summary>An angle in degrees.</summary>
    public static string Degrees(double degrees) => FormattableString.Invariant($"{degrees:0.##} degrees");
}
