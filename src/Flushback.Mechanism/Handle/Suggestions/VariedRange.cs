namespace Flushback.Mechanism.Handle.Suggestions;

/// <summary>How far a dimension is varied, from what it is now.</summary>
/// <param name="Of">The dimension.</param>
/// <param name="PresentMm">What it is now; zero for what is told as a change: depth and centre pin.</param>
/// <param name="LeastMm">Smallest change, in millimetres; at most zero.</param>
/// <param name="MostMm">Largest change; at least zero.</param>
/// <param name="LeastMetalMm">Depth of metal that must stay everywhere, beside the holes and over and under them.</param>
internal readonly record struct VariedRange(
    Dimension Of,
    double PresentMm,
    double LeastMm,
    double MostMm,
    double LeastMetalMm
)
{
    // Beyond these it is no backspring of a folding knife any more; ours.
    private const double MostPreloadMm = 4;
    private const double NarrowestMm = 0.5;
    private const double WidestMm = 8;
    private const double MostAddedMm = 3;
    private const double PinShare = 0.5;

    // Less metal at a hole neither drills nor hardens well; ours.
    private const double WallMm = 0.3;

    /// <summary>The range of a dimension on a knife.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The dimension is an assumption, which no maker can vary.</exception>
    public static VariedRange On(HandleModel model, Dimension dimension)
    {
        double wall = Math.Min(WallMm, model.Beam.LeastMetalMm);
        return dimension switch
        {
            Dimension.Preload => Between(dimension, model.PreloadMm, 0, MostPreloadMm, wall),
            Dimension.SpringWidth => Between(dimension, model.Settings.WidthMm, NarrowestMm, WidestMm, wall),
            Dimension.SpringDepth => Between(dimension, 0, wall - model.Beam.LeastMetalAtBackMm, MostAddedMm, wall),
            Dimension.CentrePinForward => Between(
                dimension,
                0,
                -PinShare * model.Beam.SpanMm,
                PinShare * model.Beam.OverhangMm,
                wall
            ),
            _ => throw new ArgumentOutOfRangeException(nameof(dimension)),
        };
    }

    /// <summary>What the dimension is with a change; zero is never a negative one.</summary>
    public double ValueAt(double byMm) => Math.Round(PresentMm + byMm, 12) + 0.0;

    private static VariedRange Between(
        Dimension of,
        double presentMm,
        double leastMm,
        double mostMm,
        double leastMetalMm
    ) => new(of, presentMm, Math.Min(0, leastMm - presentMm), Math.Max(0, mostMm - presentMm), leastMetalMm);
}
