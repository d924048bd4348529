namespace Flushback.Service.Tests.Inputs;

/// <summary>Requests that make passes on knives of the catalogue.</summary>
internal static class PassRequests
{
    /// <summary>Passes on a knife that reads as it should.</summary>
    public static Wire.SimulateRequest Of(params Wire.Pass[] passes) => On(Requests.Outlines(), passes);

    /// <summary>Passes on the knife of another request.</summary>
    public static Wire.SimulateRequest On(Wire.CheckRequest check, params Wire.Pass[] passes) =>
        new()
        {
            Name = check.Name,
            Knife = check.Knife,
            Passes = { passes },
        };

    /// <summary>A corner rounded.</summary>
    public static Wire.Pass Round(Wire.BladeFace corner, double radiusMm) =>
        new()
        {
            RoundCorner = new Wire.RoundCorner { Corner = On(corner), RadiusMm = radiusMm },
        };

    /// <summary>A face sliced.</summary>
    public static Wire.Pass Slice(Wire.BladeFace face, double frontMm, double rearMm) =>
        new()
        {
            FlatSlice = new Wire.FlatSlice
            {
                Face = On(face),
                FrontDepthMm = frontMm,
                RearDepthMm = rearMm,
            },
        };

    /// <summary>A pass of each kind, such as can be made on the wagtail one after another.</summary>
    public static Wire.Pass[] OfEachKind() =>
        [
            Slice(Wire.BladeFace.HalfStopFace, 0.02, 0.01),
            new()
            {
                WheelSlice = new Wire.WheelSlice
                {
                    Face = On(Wire.BladeFace.ClosedFace),
                    FrontDepthMm = 0.01,
                    RearDepthMm = 0.02,
                    WheelRadiusMm = 80,
                },
            },
            Round(Wire.BladeFace.OpenCorner, 0.4),
            new()
            {
                ReliefArc = new Wire.ReliefArc
                {
                    Face = On(Wire.BladeFace.OpenFlat),
                    DepthMm = 0.05,
                    FrontMarginMm = 1,
                    RearMarginMm = 1,
                },
            },
            new() { DressKick = new Wire.DressKick { DepthMm = 0.03 } },
            new()
            {
                LowerNose = new Wire.LowerNose { FrontDepthMm = 0.01, RearDepthMm = 0.01 },
            },
            new()
            {
                DressEndFace = new Wire.DressEndFace { AngleDeg = 79, DepthMm = 0 },
            },
            new()
            {
                ShortenTip = new Wire.ShortenTip { LengthMm = 0.5, Allowed = true },
            },
        ];

    private static Wire.Site On(Wire.BladeFace face) => new() { BladeFace = face };
}
