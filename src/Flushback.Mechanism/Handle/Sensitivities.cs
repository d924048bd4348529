using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Handle;

/// <summary>What pull, stress and lift owe to each dimension, by central differences of the whole computation.</summary>
internal static class Sensitivities
{
    // Small against what they vary, large against the sweep's own rounding.
    private const double DimensionStepMm = 0.02;
    private const double AssumptionStepMm = 1;

    // Figures are read off at every degree and a half; both sides of a difference at the same ones.
    private static readonly Angle _step = Angle.FromDegrees(1);

    public static ImmutableArray<Sensitivity> Of(HandleModel model, CancellationToken cancellation)
    {
        HandleSettings settings = model.Settings with
        {
            PreloadKind = PreloadKind.Sink,
            PreloadMm = model.PreloadMm,
            NailNickMm = model.NailNickMm,
            StiffNoseMm = -model.Beam.StiffFromXMm,
        };
        BenchGround ground = model.Ground;
        return
        [
            Central(Dimension.SpringDepth, DimensionStepMm, by => new(ground, settings, by, cancellation)),
            Central(
                Dimension.SpringWidth,
                DimensionStepMm,
                by => new(ground, settings with { WidthMm = settings.WidthMm + by }, 0, cancellation)
            ),
            Central(
                Dimension.Preload,
                DimensionStepMm,
                by => new(ground, settings with { PreloadMm = settings.PreloadMm + by }, 0, cancellation)
            ),
            Central(
                Dimension.CentrePinForward,
                DimensionStepMm,
                by => new(new BenchGround(PinMoved(ground.Knife, by), cancellation), settings, 0, cancellation)
            ),
            Central(
                Dimension.StiffNose,
                AssumptionStepMm,
                by => new(ground, settings with { StiffNoseMm = settings.StiffNoseMm + by }, 0, cancellation)
            ),
        ];
    }

    private static Sensitivity Central(Dimension dimension, double stepMm, Func<double, HandleModel> build)
    {
        HandleSweep less = new(build(-stepMm), _step);
        HandleSweep more = new(build(stepMm), _step);
        return new Sensitivity(
            dimension,
            (more.Pull.PullN - less.Pull.PullN) / (2 * stepMm),
            (more.PeakStressMpa - less.PeakStressMpa) / (2 * stepMm),
            (more.GreatestLiftDifferenceMm - less.GreatestLiftDifferenceMm) / (2 * stepMm)
        );
    }

    private static Knife PinMoved(Knife knife, double byMm) =>
        knife with
        {
            CentrePin = knife.CentrePin with { Centre = knife.CentrePin.Centre + new Vector(byMm, 0) },
        };
}
