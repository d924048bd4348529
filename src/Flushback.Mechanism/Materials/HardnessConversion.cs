using System.Collections.Immutable;

namespace Flushback.Mechanism.Materials;

/// <summary>Tensile strength estimated from Rockwell C hardness.</summary>
/// <remarks>
/// Published conversions disagree by 4 percent at 45 HRC and by 11 percent at 55 HRC, so both ends are given: the lowest
/// and the highest of three tables, each read in a public copy. At 40, 45, 50 and 55 HRC: DIN 50150 (1262, 1442, 1675 and
/// 1979 MPa, between its rows in a straight line); a table named after ASTM E140 (182, 215, 255 and 301 ksi, in metric
/// prints 1480, 1760 and 2075 MPa from 45 HRC on); a strip seller's, named after ASTM E140 and SAE J417 (1248, 1421, 1620 and
/// 1875 MPa). The scope of ISO 18265:2013 itself calls estimates of tensile strength its least reliable values.
/// </remarks>
public static class HardnessConversion
{
    private static readonly ImmutableArray<(double Hrc, ValueRange Mpa)> _rows =
    [
        (40, new ValueRange(1248, 1262)),
        (45, new ValueRange(1421, 1480)),
        (50, new ValueRange(1620, 1760)),
        (55, new ValueRange(1875, 2075)),
    ];

    /// <summary>The hardness the conversion spans, in HRC.</summary>
    public static ValueRange SpanHrc { get; } = new(_rows[0].Hrc, _rows[^1].Hrc);

    /// <summary>Lowest and highest estimate in MPa, between the rows in a straight line; null outside the span.</summary>
    public static ValueRange? TensileMpa(double hardnessHrc)
    {
        for (int i = 1; i < _rows.Length; i++)
        {
            (double fromHrc, ValueRange from) = _rows[i - 1];
            (double toHrc, ValueRange to) = _rows[i];
            if (hardnessHrc >= fromHrc && hardnessHrc <= toHrc)
            {
                double share = (hardnessHrc - fromHrc) / (toHrc - fromHrc);
                return new ValueRange(
                    from.Low + (share * (to.Low - from.Low)),
                    from.High + (share * (to.High - from.High))
                );
            }
        }

        return null;
    }
}
