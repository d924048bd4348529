using MathNet.Numerics.LinearAlgebra;

namespace Flushback.Mechanism.Measured.Solving;

/// <summary>The shortest offsets within a limit whose linear readings come nearest to those wanted.</summary>
/// <remarks>
/// Least squares with a small price on the offsets themselves (ridge regression, elementary), which makes the shortest of
/// all that fit, and the nearest where none does. An offset beyond the limit is set to it and the others are found again.
/// </remarks>
internal static class LeastOffsets
{
    // Against slopes of about one: moves what is explained by ten picometres in a millimetre.
    private const double Price = 1e-8;

    /// <summary>Solves.</summary>
    /// <param name="slopes">Slope of each reading by each offset.</param>
    /// <param name="wanted">Each reading wanted, the offsets all counted from nothing.</param>
    /// <param name="mostMm">Limit of each offset, either way.</param>
    public static double[] Of(double[][] slopes, double[] wanted, double mostMm)
    {
        int count = slopes[0].Length;
        double?[] held = new double?[count];
        while (true)
        {
            double[] offsets = Free(slopes, wanted, held);
            int worst = Enumerable
                .Range(0, count)
                .Where(k => held[k] is null)
                .DefaultIfEmpty(-1)
                .MaxBy(k => k < 0 ? 0 : Math.Abs(offsets[k]));
            if (worst < 0 || Math.Abs(offsets[worst]) <= mostMm)
            {
                return offsets;
            }

            held[worst] = Math.Sign(offsets[worst]) * mostMm;
        }
    }

    private static double[] Free(double[][] slopes, double[] wanted, double?[] held)
    {
        Matrix<double> readings = Matrix<double>.Build.DenseOfRowArrays(slopes);
        Matrix<double> normal =
            readings.TransposeThisAndMultiply(readings)
            + Matrix<double>.Build.DenseDiagonal(held.Length, held.Length, Price);
        Vector<double> right = readings.TransposeThisAndMultiply(Vector<double>.Build.DenseOfArray(wanted));
        for (int k = 0; k < held.Length; k++)
        {
            if (held[k] is { } value)
            {
                normal.ClearRow(k);
                (normal[k, k], right[k]) = (1, value);
            }
        }

        return normal.Solve(right).ToArray();
    }
}
