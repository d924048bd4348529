using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Handle;

namespace Flushback.Handle.Tests;

/// <summary>A long spring on thin pins, deep where it is drilled: it pulls as a knife should and its steel stands it.</summary>
internal static class SoundKnife
{
    public static KnifeDesign Design { get; } =
        new("Sound")
        {
            PinRadiusMm = 0.8,
            Spring = new SpringDesign
            {
                CentrePin = new Point(-42, 4.9),
                RearPin = new Point(-78, 4.9),
                BellyMm = 0.5,
            },
            Tang = new TangDesign { OpenCornerRadiusMm = 0.3, ClosedCornerRadiusMm = 0.3 },
            Blade = new BladeDesign { LengthMm = 75 },
        };

    public static HandleSettings Settings { get; } =
        new()
        {
            WidthMm = 3.2,
            PreloadMm = 0.4,
            NailNickMm = 33,
        };
}
