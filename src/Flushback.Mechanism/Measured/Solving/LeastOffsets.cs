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
        int count = held.Length;
        double[,] normal = new double[count, count + 1];
        for (int j = 0; j < count; j++)
        {
            if (held[j] is { } value)
            {
                (normal[j, j], normal[j, count]) = (1, value);
                continue;
            }

            normal[j, j] = Price;
            for (int i = 0; i < slopes.Length; i++)
            {
                normal[j, count] += slopes[i][j] * wanted[i];
                for (int k = 0; k < count; k++)
                {
                    normal[j, k] += slopes[i][j] * slopes[i][k];
                }
            }
        }

        return Solved(normal, count);
    }

    /// <summary>Gauss's elimination with the largest pivot of each column.</summary>
    private static double[] Solved(double[,] rows, int count)
    {
        for (int column = 0; column < count; column++)
        {
            int pivot = Enumerable.Range(column, count - column).MaxBy(row => Math.Abs(rows[row, column]));
            for (int k = column; k <= count; k++)
            {
                (rows[column, k], rows[pivot, k]) = (rows[pivot, k], rows[column, k]);
            }

            for (int row = 0; row < count; row++)
            {
                double share = row == column ? 0 : rows[row, column] / rows[column, column];
                for (int k = column; k <= count && share != 0; k++)
                {
                    rows[row, k] -= share * rows[column, k];
                }
            }
        }

        return [.. Enumerable.Range(0, count).Select(k => rows[k, count] / rows[k, k])];
    }
}
