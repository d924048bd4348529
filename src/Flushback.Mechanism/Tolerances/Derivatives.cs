using System.Collections.Immutable;

namespace Flushback.Mechanism.Tolerances;

/// <summary>How an outcome answers when dimensions are off a little.</summary>
/// <param name="Of">The outcome.</param>
/// <param name="AsDrawn">What it is as drawn: mm, rad, N or MPa.</param>
/// <param name="PerMm">Its change for a millimetre of each dimension, in their order.</param>
/// <param name="IsExact">
/// True for derivatives in closed form, exact to first order; false for central differences of parts really solved.
/// </param>
public sealed record Derivatives(Outcome Of, double AsDrawn, ImmutableArray<double> PerMm, bool IsExact)
{
    /// <summary>What the outcome changes by to first order.</summary>
    /// <param name="deviationsMm">Deviations in the order of the dimensions.</param>
    public double Change(ReadOnlySpan<double> deviationsMm)
    {
        double change = 0;
        for (int i = 0; i < deviationsMm.Length; i++)
        {
            change += PerMm[i] * deviationsMm[i];
        }

        return change;
    }
}
