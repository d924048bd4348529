using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Handle;

/// <summary>A knife with one dimension changed and everything else held: preload, nail nick, stiff nose.</summary>
internal sealed class VariedKnife(HandleModel model, CancellationToken cancellation)
{
    private readonly HandleSettings _settings = model.Settings with
    {
        PreloadKind = PreloadKind.Sink,
        PreloadMm = model.PreloadMm,
        NailNickMm = model.NailNickMm,
        StiffNoseMm = -model.Beam.StiffFromXMm,
    };

    /// <summary>The knife with a dimension larger by so many millimetres.</summary>
    public HandleModel With(Dimension dimension, double byMm) =>
        dimension switch
        {
            Dimension.SpringDepth => new(model.Ground, _settings, byMm, cancellation),
            Dimension.SpringWidth => On(model.Ground, _settings with { WidthMm = _settings.WidthMm + byMm }),
            Dimension.Preload => On(model.Ground, _settings with { PreloadMm = _settings.PreloadMm + byMm }),
            Dimension.CentrePinForward => On(new BenchGround(PinMoved(byMm), cancellation), _settings),
            Dimension.StiffNose => On(model.Ground, _settings with { StiffNoseMm = _settings.StiffNoseMm + byMm }),
            _ => throw new ArgumentOutOfRangeException(nameof(dimension)),
        };

    private HandleModel On(BenchGround ground, HandleSettings settings) => new(ground, settings, 0, cancellation);

    private Knife PinMoved(double byMm)
    {
        Knife knife = model.Ground.Knife;
        Circle pin = knife.CentrePin;
        return knife with { CentrePin = pin with { Centre = pin.Centre + new Vector(byMm, 0) } };
    }
}
