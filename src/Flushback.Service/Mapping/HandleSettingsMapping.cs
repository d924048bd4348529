using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Materials;

namespace Flushback.Service.Mapping;

/// <summary>Spring, steel and friction from the contract: what is absent keeps the core's default.</summary>
internal static class HandleSettingsMapping
{
    /// <summary>From the contract; validated.</summary>
    public static HandleSettings ToSettings(this Wire.HandleSettings handle)
    {
        HandleSettings defaults = new();
        return new HandleSettings
        {
            WidthMm = handle.HasWidthMm ? handle.WidthMm : defaults.WidthMm,
            PreloadKind = KindOf(handle),
            PreloadMm = handle.PreloadCase switch
            {
                Wire.HandleSettings.PreloadOneofCase.PreloadMm => handle.PreloadMm,
                Wire.HandleSettings.PreloadOneofCase.RearPinShiftMm => handle.RearPinShiftMm,
                _ => defaults.PreloadMm,
            },
            SpringSteel = SteelOf(handle) ?? defaults.SpringSteel,
            SpringHardnessHrc = handle.HasSpringHardnessHrc ? handle.SpringHardnessHrc : defaults.SpringHardnessHrc,
            BladeHardnessHrc = handle.HasBladeHardnessHrc ? handle.BladeHardnessHrc : defaults.BladeHardnessHrc,
            Friction = handle.HasFriction ? handle.Friction : defaults.Friction,
            NailNickMm = handle.HasNailNickMm ? handle.NailNickMm : null,
            StiffNoseMm = handle.HasStiffNoseMm ? handle.StiffNoseMm : null,
            WantedPullN = handle.HasWantedPullN ? handle.WantedPullN : null,
            Varied = handle.Varied.ToDimension() ?? defaults.Varied,
            MostStressMpa = handle.HasMostStressMpa ? handle.MostStressMpa : null,
        };
    }

    private static PreloadKind KindOf(Wire.HandleSettings handle) =>
        handle.PreloadCase switch
        {
            Wire.HandleSettings.PreloadOneofCase.RearPinShiftMm => PreloadKind.RearPinShift,
            Wire.HandleSettings.PreloadOneofCase.DrawnFree when handle.DrawnFree => PreloadKind.DrawnFree,
            _ => PreloadKind.Sink,
        };

    private static Steel? SteelOf(Wire.HandleSettings handle) =>
        handle.OwnSteel is { } own
            ? new Steel(
                own.Name,
                new ValueRange(own.ModulusMpa, own.ModulusMpa),
                "as given in the request",
                own.HasTensileMpa ? new ValueRange(own.TensileMpa, own.TensileMpa) : null
            )
            : Steels.Named(handle.SpringSteel);
}
