namespace Flushback.Dxf;

/// <summary>What a length would be if the drawing's numbers were meant in another unit.</summary>
/// <param name="Unit">The unit; null for a scale that no drawing can state, such as pixels.</param>
/// <param name="Name">Its name in the plural.</param>
/// <param name="LengthMm">The length, in millimetres.</param>
public readonly record struct UnitReading(DrawingUnit? Unit, string Name, double LengthMm)
{
    /// <summary>The reading as part of a sentence: <c>in inches it would be 114.3 mm (4.5 in)</c>.</summary>
    public override string ToString() => $"in {Name} it would be {UnitPlausibility.InWords(LengthMm)}";
}
