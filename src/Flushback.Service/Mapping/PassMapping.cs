using Flushback.Geometry;
using Flushback.Mechanism.Passes;

namespace Flushback.Service.Mapping;

/// <summary>Passes from the contract; validated.</summary>
internal static class PassMapping
{
    /// <summary>From the contract.</summary>
    public static Pass ToPass(this Wire.Pass pass) =>
        pass.KindCase switch
        {
            Wire.Pass.KindOneofCase.FlatSlice => new FlatSlice(pass.FlatSlice.Face.ToSite())
            {
                FrontDepthMm = pass.FlatSlice.FrontDepthMm,
                RearDepthMm = pass.FlatSlice.RearDepthMm,
            },
            Wire.Pass.KindOneofCase.WheelSlice => new WheelSlice(
                pass.WheelSlice.Face.ToSite(),
                pass.WheelSlice.WheelRadiusMm
            )
            {
                FrontDepthMm = pass.WheelSlice.FrontDepthMm,
                RearDepthMm = pass.WheelSlice.RearDepthMm,
            },
            Wire.Pass.KindOneofCase.RoundCorner => new RoundCorner(
                pass.RoundCorner.Corner.ToSite(),
                pass.RoundCorner.RadiusMm
            ),
            Wire.Pass.KindOneofCase.ReliefArc => new ReliefArc(
                pass.ReliefArc.Face.ToSite(),
                pass.ReliefArc.DepthMm,
                pass.ReliefArc.FrontMarginMm,
                pass.ReliefArc.RearMarginMm
            ),
            Wire.Pass.KindOneofCase.DressKick => new DressKick(pass.DressKick.DepthMm),
            Wire.Pass.KindOneofCase.LowerNose => new LowerNose
            {
                FrontDepthMm = pass.LowerNose.FrontDepthMm,
                RearDepthMm = pass.LowerNose.RearDepthMm,
            },
            Wire.Pass.KindOneofCase.DressEndFace => new DressEndFace(
                Angle.FromDegrees(pass.DressEndFace.AngleDeg),
                pass.DressEndFace.DepthMm
            ),
            Wire.Pass.KindOneofCase.ShortenTip => new ShortenTip(pass.ShortenTip.LengthMm, pass.ShortenTip.Allowed),
            _ => throw new ArgumentOutOfRangeException(nameof(pass), pass.KindCase, "Not validated."),
        };

    /// <summary>From the contract.</summary>
    public static Site ToSite(this Wire.Site site) =>
        site.FaceCase == Wire.Site.FaceOneofCase.SpringFace
            ? Site.On(site.SpringFace.ToFace())
            : Site.On(site.BladeFace.ToFace());

    /// <summary>How to simulate, from the contract: what is absent keeps the core's default.</summary>
    public static SimulationSettings ToSettings(this Wire.SimulateRequest request) =>
        new() { Bench = request.Bench.ToSettings(), Passes = request.Remains.ToSettings() };

    /// <summary>What has to be left, from the contract; null for all defaults.</summary>
    public static PassSettings ToSettings(this Wire.PassSettings? remains)
    {
        PassSettings defaults = PassSettings.Default;
        Wire.PassSettings asked = remains ?? new Wire.PassSettings();
        return new PassSettings
        {
            LeastPinWallMm = asked.HasLeastPinWallMm ? asked.LeastPinWallMm : defaults.LeastPinWallMm,
            LeastFaceMm = asked.HasLeastFaceMm ? asked.LeastFaceMm : defaults.LeastFaceMm,
        };
    }
}
