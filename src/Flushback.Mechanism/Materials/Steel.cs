namespace Flushback.Mechanism.Materials;

/// <summary>A steel for springs or blades.</summary>
/// <param name="Designation">Standard designation, such as <c>1095</c>; a user's own steel may bear any name.</param>
/// <param name="ModulusMpa">Modulus of elasticity in MPa, at room temperature.</param>
/// <param name="ModulusSource">Where the modulus comes from.</param>
/// <param name="TensileMpa">
/// Tensile strength in MPa as heat-treated, for a steel whose strength is known; null to estimate it from the hardness.
/// </param>
public sealed record Steel(
    string Designation,
    ValueRange ModulusMpa,
    string ModulusSource,
    ValueRange? TensileMpa = null
)
{
    /// <summary>Transverse contraction (Poisson's ratio) of any steel.</summary>
    /// <remarks>Data sheets of 1095, 52100, D2, O2 and 15-5PH give 0.27 to 0.30, each read in a public copy.</remarks>
    public const double Poisson = 0.3;

    /// <summary>Modulus used for computing, in MPa: the middle of its range. Forces and stresses are linear in it.</summary>
    public double ModulusUsedMpa => ModulusMpa.Middle;

    /// <summary>Tensile strength in MPa at a hardness, or as given; null outside the conversion's range.</summary>
    public ValueRange? TensileAt(double hardnessHrc) => TensileMpa ?? HardnessConversion.TensileMpa(hardnessHrc);
}
