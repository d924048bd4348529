using System.Collections.Immutable;
using Flushback.Geometry;

namespace Flushback.Mechanism.Handle;

/// <summary>What pull, stress and lift owe to each dimension, by central differences of the whole computation.</summary>
internal static class Sensitivities
{
    // Small against what they vary, large against the sweep's own rounding.
    private const double DimensionStepMm = 0.02;
    private const double AssumptionStepMm = 1;

    // Figures are read off at every degree; both sides of a difference at the same ones.
    private static readonly Angle _step = Angle.FromDegrees(1);

    public static ImmutableArray<Sensitivity> Of(HandleModel model, CancellationToken cancellation)
    {
        VariedKnife varied = new(model, cancellation);
        return
        [
            Central(varied, Dimension.SpringDepth, DimensionStepMm),
            Central(varied, Dimension.SpringWidth, DimensionStepMm),
            Central(varied, Dimension.Preload, DimensionStepMm),
            Central(varied, Dimension.CentrePinForward, DimensionStepMm),
            Central(varied, Dimension.StiffNose, AssumptionStepMm),
        ];
    }

    private static Sensitivity Central(VariedKnife varied, Dimension dimension, double stepMm)
    {
        HandleSweep less = new(varied.With(dimension, -stepMm), _step);
        HandleSweep more = new(varied.With(dimension, stepMm), _step);
        return new Sensitivity(
            dimension,
            (more.Pull.PullN - less.Pull.PullN) / (2 * stepMm),
            (more.PeakStressMpa - less.PeakStressMpa) / (2 * stepMm),
            (more.GreatestLiftDifferenceMm - less.GreatestLiftDifferenceMm) / (2 * stepMm)
        );
    }
}
