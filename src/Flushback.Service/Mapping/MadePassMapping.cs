using Flushback.Mechanism.Passes;

namespace Flushback.Service.Mapping;

/// <summary>Passes that were planned, to the contract.</summary>
internal static class MadePassMapping
{
    /// <summary>To the contract.</summary>
    public static Wire.Pass ToWire(this Pass pass) =>
        pass switch
        {
            FlatSlice slice => new Wire.Pass
            {
                FlatSlice = new Wire.FlatSlice
                {
                    Face = slice.Face.ToWire(),
                    FrontDepthMm = slice.FrontDepthMm,
                    RearDepthMm = slice.RearDepthMm,
                },
            },
            WheelSlice wheel => new Wire.Pass
            {
                WheelSlice = new Wire.WheelSlice
                {
                    Face = wheel.Face.ToWire(),
                    FrontDepthMm = wheel.FrontDepthMm,
                    RearDepthMm = wheel.RearDepthMm,
                    WheelRadiusMm = wheel.WheelRadiusMm,
                },
            },
            RoundCorner round => new Wire.Pass
            {
                RoundCorner = new Wire.RoundCorner { Corner = round.Corner.ToWire(), RadiusMm = round.RadiusMm },
            },
            ReliefArc relief => new Wire.Pass
            {
                ReliefArc = new Wire.ReliefArc
                {
                    Face = relief.Face.ToWire(),
                    DepthMm = relief.DepthMm,
                    FrontMarginMm = relief.FrontMarginMm,
                    RearMarginMm = relief.RearMarginMm,
                },
            },
            DressKick kick => new Wire.Pass { DressKick = new Wire.DressKick { DepthMm = kick.DepthMm } },
            LowerNose nose => new Wire.Pass
            {
                LowerNose = new Wire.LowerNose { FrontDepthMm = nose.FrontDepthMm, RearDepthMm = nose.RearDepthMm },
            },
            DressEndFace end => new Wire.Pass
            {
                DressEndFace = new Wire.DressEndFace { AngleDeg = end.AngleInMetal.Degrees, DepthMm = end.DepthMm },
            },
            ShortenTip tip => new Wire.Pass
            {
                ShortenTip = new Wire.ShortenTip { LengthMm = tip.LengthMm, Allowed = tip.IsAllowed },
            },
            _ => throw new ArgumentOutOfRangeException(nameof(pass), pass, "The contract has no such pass."),
        };

    /// <summary>To the contract.</summary>
    public static Wire.Site ToWire(this Site site) =>
        site.Spring is { } spring
            ? new Wire.Site { SpringFace = spring.ToWire() }
            : new Wire.Site { BladeFace = (site.Blade ?? Mechanism.Knives.BladeFace.Unknown).ToWire() };
}
