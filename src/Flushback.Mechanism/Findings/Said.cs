namespace Flushback.Mechanism.Findings;

/// <summary>Lengths and angles as a maker says them, in findings.</summary>
internal static class Said
{
    private const double NewtonsPerPound = 4.4482216152605;

    /// <summary>A reading of the dial with its sign, in thousandths of an inch and millimetres.</summary>
    public static string Reading(double mm) =>
        FormattableString.Invariant(
            $"{mm / Bench.StopTargets.MmPerThou:+0.0;-0.0;0.0} thou ({mm:+0.000;-0.000;0.000} mm)"
        );

    /// <summary>A length without a sign, in millimetres and thousandths of an inch.</summary>
    public static string Length(double mm) =>
        FormattableString.Invariant($"{mm:0.000} mm ({mm / Bench.StopTargets.MmPerThou:0.0} thou)");

    /// <summary>A force in newtons and pounds-force.</summary>
    public static string Force(double newtons) =>
        FormattableString.Invariant($"{newtons:0.0} N ({newtons / NewtonsPerPound:0.0} lbf)");

    /// <summary>An angle in degrees.</summary>
    public static string Degrees(double degrees) => FormattableString.Invariant($"{degrees:0.00} degrees");

    /// <summary>A stop in running text.</summary>
    public static string Of(Bench.Stop stop) =>
        stop switch
        {
            Bench.Stop.Open => "open",
            Bench.Stop.HalfStop => "at the half stop",
            _ => "closed",
        };
}
