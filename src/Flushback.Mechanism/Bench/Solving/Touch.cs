using Flushback.Geometry.Polar;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>
/// The spring rotation at which a piece of the blade and a piece of the spring touch, and where: the largest (or, for
/// an upper bound, smallest) difference of their polar angles about the centre pin.
/// </summary>
/// <param name="Rotation">Spring rotation in radians at which the two touch.</param>
/// <param name="RadiusMm">Distance of the touching point from the centre pin.</param>
/// <param name="BladePolar">Polar angle of the touching point, in radians.</param>
/// <param name="BladePiece"><see cref="RadialPiece.Index"/> of the blade's piece at this blade angle.</param>
/// <param name="SpringPiece"><see cref="RadialPiece.Index"/> of the spring's piece, where it is drawn.</param>
internal readonly record struct Touch(
    double Rotation,
    double RadiusMm,
    double BladePolar,
    int BladePiece,
    int SpringPiece
)
{
    /// <summary>A lower bound that bounds nothing.</summary>
    public static Touch None { get; } = new(double.NegativeInfinity, 0, 0, -1, -1);

    /// <summary>An upper bound that bounds nothing.</summary>
    public static Touch Unbounded { get; } = new(double.PositiveInfinity, 0, 0, -1, -1);
}
