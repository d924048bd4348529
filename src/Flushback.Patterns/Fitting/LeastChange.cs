using MathNet.Numerics.LinearAlgebra;

namespace Flushback.Patterns.Fitting;

/// <summary>The shortest change that meets every demand.</summary>
/// <remarks>
/// Least distance programming by non-negative least squares: Lawson and Hanson, Solving Least Squares Problems, chapter 23
/// (from memory). The change is the residual of a fit of the demands to (0, 1); where that residual vanishes no change meets
/// them all, and the demands with a weight are those that contradict one another (Farkas' lemma).
/// </remarks>
internal static class LeastChange
{
    private const double LeastSlope = 1e-12;
    private const double NoGain = 1e-10;

    // Keeps two demands that are nearly one from sharing a weight without bound.
    private const double Ridge = 1e-13;

    /// <summary>Looks for it.</summary>
    /// <param name="demands">Straight demands.</param>
    /// <param name="least">Least change of each lever; at most zero.</param>
    /// <param name="most">Greatest change of each; at least zero.</param>
    /// <returns>The change; or null, and the weight of each demand that contradicts others, then of each lower and upper bound.</returns>
    public static (double[]? Change, double[] Weights) Meeting(
        IReadOnlyList<Plane> demands,
        ReadOnlySpan<double> least,
        ReadOnlySpan<double> most
    )
    {
        int levers = least.Length;
        Matrix<double> rows = Matrix<double>.Build.Dense(levers + 1, demands.Count + (2 * levers));
        for (int j = 0; j < demands.Count; j++)
        {
            double length = Math.Sqrt(demands[j].Slope.Sum(slope => slope * slope));
            double scale = length > LeastSlope ? 1 / length : 1;
            for (int i = 0; i < Math.Min(levers, demands[j].Slope.Length); i++)
            {
                rows[i, j] = demands[j].Slope[i] * scale;
            }

            rows[levers, j] = demands[j].Level * scale;
        }

        double farthest = 0;
        for (int i = 0; i < levers; i++)
        {
            int lower = demands.Count + i;
            int upper = lower + levers;
            rows[i, lower] = 1;
            rows[levers, lower] = least[i];
            rows[i, upper] = -1;
            rows[levers, upper] = -most[i];
            farthest += Math.Max(least[i] * least[i], most[i] * most[i]);
        }

        Vector<double> wanted = Vector<double>.Build.Dense(levers + 1);
        wanted[levers] = 1;
        Vector<double> weights = NonNegative(rows, wanted);
        Vector<double> residual = (rows * weights) - wanted;
        double square = residual * residual;

        // For a change of length c the square is 1 / (1 + c^2), and no change within the bounds is longer than the farthest.
        return square < 0.5 / (1 + farthest)
            ? (null, weights.ToArray())
            : ([.. residual.Take(levers).Select(r => -r / residual[levers])], weights.ToArray());
    }

    /// <summary>Weights, none negative, with which the columns come nearest to what is wanted (Lawson and Hanson's rule).</summary>
    private static Vector<double> NonNegative(Matrix<double> columns, Vector<double> wanted)
    {
        int count = columns.ColumnCount;
        Vector<double> weights = Vector<double>.Build.Dense(count);
        List<int> used = [];
        for (int round = 0; round < 4 * count; round++)
        {
            Vector<double> gain = columns.TransposeThisAndMultiply(wanted - (columns * weights));
            int best = -1;
            for (int j = 0; j < count; j++)
            {
                if (!used.Contains(j) && gain[j] > NoGain && (best < 0 || gain[j] > gain[best]))
                {
                    best = j;
                }
            }

            if (best < 0)
            {
                break;
            }

            used.Add(best);
            Settle(columns, wanted, weights, used);
        }

        return weights;
    }

    /// <summary>Moves to the least squares of the columns in use, and drops those whose weight would turn negative.</summary>
    private static void Settle(Matrix<double> columns, Vector<double> wanted, Vector<double> weights, List<int> used)
    {
        while (used.Count > 0)
        {
            Matrix<double> part = Matrix<double>.Build.DenseOfColumnVectors(used.Select(j => columns.Column(j)));
            Matrix<double> normal = part.TransposeThisAndMultiply(part);
            normal += Matrix<double>.Build.DenseDiagonal(used.Count, Ridge);
            Vector<double> solved = normal.Solve(part.TransposeThisAndMultiply(wanted));
            double step = 1;
            for (int k = 0; k < used.Count; k++)
            {
                if (solved[k] <= 0)
                {
                    double weight = weights[used[k]];
                    step = Math.Min(step, weight / (weight - solved[k] + double.Epsilon));
                }
            }

            for (int k = 0; k < used.Count; k++)
            {
                weights[used[k]] += step * (solved[k] - weights[used[k]]);
            }

            if (step >= 1)
            {
                return;
            }

            List<int> spent = [.. used.Where((j, k) => solved[k] <= 0 && weights[j] <= NoGain)];
            foreach (int j in spent)
            {
                weights[j] = 0;
                used.Remove(j);
            }

            if (spent.Count == 0)
            {
                return;
            }
        }
    }
}
