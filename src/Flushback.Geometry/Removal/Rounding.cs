namespace Flushback.Geometry.Removal;

/// <summary>Rounds a corner: by one arc between its two neighbours where that is the answer, by rolling a disc otherwise.</summary>
public static class Rounding
{
    // A disc that reaches out of the metal by no more than this lies inside, by rounding.
    private const double InsideMm = 1e-7;

    /// <summary>Rounds what lies between two edges, so that no radius smaller than this is left there.</summary>
    /// <param name="outline">The outline, counter-clockwise and sound.</param>
    /// <param name="before">The edge before the corner.</param>
    /// <param name="after">The edge after the corner; a single edge between the two is a round already there.</param>
    /// <param name="radiusMm">Radius, above zero.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    /// <returns>What is left, or why nothing was cut; exactly one of the two.</returns>
    public static (CutOutline? Cut, CutFailure? Failure) Of(
        Outline outline,
        int before,
        int after,
        double radiusMm,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(outline);
        int count = outline.Edges.Length;
        int between = (((after - before - 1) % count) + count) % count;
        bool isOneArc =
            between <= 1
            && Fillet.Between(outline.Edges[before], outline.Edges[after], radiusMm) is { } round
            && outline.SignedDistanceMm(round.Centre) >= radiusMm - InsideMm;
        return isOneArc
            ? Fillet.Of(outline, before, after, radiusMm)
            : CornerOpening.Of(outline, before, after, radiusMm, cancellation);
    }
}
