using MathNet.Numerics.Distributions;

namespace Flushback.Mechanism.Tolerances.Chance;

/// <summary>Draws the deviations of a part: a stream of its own for each part of a seed.</summary>
internal sealed class PartChance(ToleranceList list, Distribution distribution, ulong seed)
{
    // From a word's 53 leading bits to the middle of its step between 0 and 1, so that neither end is met.
    private const double Step = 1.0 / (1L << 53);

    /// <summary>Standard deviation of a dimension, in millimetres.</summary>
    /// <remarks>
    /// Offset and tilt are half the sum and half the difference of the deviations of a face's two ends, which are drawn: so
    /// each has the standard deviation of an end over sqrt(2), and the two are not correlated.
    /// </remarks>
    public double StandardDeviationMm(Dimension dimension)
    {
        double single = PropagationLaw.StandardDeviation(distribution, list.Of(dimension).HalfWidthMm);
        return IsPaired(dimension) ? single / Math.Sqrt(2) : single;
    }

    /// <summary>Fills in the deviations of a part, in the order of the dimensions.</summary>
    public void Draw(int part, Span<double> deviationsMm)
    {
        for (int i = 0; i < deviationsMm.Length; i++)
        {
            Tolerance tolerance = list.Of(list.Dimensions[i]);
            deviationsMm[i] = tolerance.MiddleMm + (tolerance.HalfWidthMm * Shape(UniformAt(part, i)));
        }

        for (int i = 0; i < deviationsMm.Length; i++)
        {
            if (list.Dimensions[i].Deviation == Deviation.Tilt)
            {
                (double front, double rear) = (deviationsMm[i - 1], deviationsMm[i]);
                (deviationsMm[i - 1], deviationsMm[i]) = ((front + rear) / 2, (front - rear) / 2);
            }
            else if (list.Of(list.Dimensions[i]).IsOneSided)
            {
                // The tail of the normal distribution: no hole is smaller than its pin.
                deviationsMm[i] = Math.Max(0, deviationsMm[i]);
            }
        }
    }

    private double Shape(double uniform) =>
        distribution == Distribution.Normal
            ? Normal.InvCDF(0, 1 / PropagationLaw.NormalLimit, uniform)
            : (2 * uniform) - 1;

    private double UniformAt(int part, int index)
    {
        PhiloxBlock counter = new((uint)(index / 2), 0, (uint)part, 0);
        PhiloxBlock block = PhiloxBlock.Of(counter, (uint)seed, (uint)(seed >> 32));
        (uint high, uint low) = index % 2 == 0 ? (block.A, block.B) : (block.C, block.D);
        return ((((ulong)high << 32 | low) >> 11) + 0.5) * Step;
    }

    private bool IsPaired(Dimension dimension) =>
        dimension.Deviation == Deviation.Tilt
        || (
            dimension.Deviation == Deviation.Offset
            && list.Dimensions.Contains(dimension with { Deviation = Deviation.Tilt })
        );
}
