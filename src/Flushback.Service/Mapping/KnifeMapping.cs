using Flushback.Geometry;
using Flushback.Mechanism.Knives;

namespace Flushback.Service.Mapping;

/// <summary>A knife from the contract.</summary>
internal static class KnifeMapping
{
    /// <summary>Outlines and pins, without what the request says about how they are drawn.</summary>
    public static DrawnKnife ToDrawnKnife(this Wire.KnifeOutlines outlines) =>
        new()
        {
            Blade = outlines.Blade.ToOutline(),
            Spring = outlines.Spring.ToOutline(),
            Handle = outlines.Handle?.ToOutline(),
            Pivot = outlines.Pivot.ToCircle(),
            CentrePin = outlines.CentrePin.ToCircle(),
            RearPin = outlines.RearPin?.ToCircle(),
        };

    /// <summary>Outlines and pins to the contract, in the frame they were drawn in.</summary>
    public static Wire.KnifeOutlines ToWire(this DrawnKnife drawn) =>
        new()
        {
            Blade = drawn.Blade.ToWire(),
            Spring = drawn.Spring.ToWire(),
            Handle = drawn.Handle?.ToWire(),
            Pivot = drawn.Pivot.ToWire(),
            CentrePin = drawn.CentrePin.ToWire(),
            RearPin = drawn.RearPin?.ToWire(),
        };

    /// <summary>The same knife with what the request says about how it is drawn.</summary>
    public static DrawnKnife As(this DrawnKnife drawn, Wire.Knife request) =>
        drawn with
        {
            DrawnBladeAngle = request.HasDrawnBladeAngleDeg ? Angle.FromDegrees(request.DrawnBladeAngleDeg) : null,
            DialPoint = request.DialPoint?.ToPoint(),
            HandleAxis = request.HasHandleAxisDeg ? Angle.FromDegrees(request.HandleAxisDeg) : null,
            HasHalfStop = request.HasHasHalfStop ? request.HasHalfStop : null,
            FaceOverrides = [.. request.FaceOverrides.Select(ToOverride)],
        };

    private static FaceOverride ToOverride(Wire.FaceOverride named) =>
        new(
            named.Near.ToPoint(),
            named.HasBladeFace ? named.BladeFace.ToFace() : null,
            named.HasSpringFace ? named.SpringFace.ToFace() : null
        );
}
