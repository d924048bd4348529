using Flushback.Inspection;

namespace Flushback.Service.Mapping;

/// <summary>Settings of an inspection from the contract; whatever is absent keeps the core's default.</summary>
internal static class InspectionSettingsMapping
{
    /// <summary>From the contract.</summary>
    /// <param name="wire">The settings, validated; null for all defaults.</param>
    public static InspectionSettings ToSettings(this Wire.InspectionSettings? wire)
    {
        InspectionSettings defaults = new();
        return wire is null
            ? defaults
            : new InspectionSettings
            {
                CutLayers = [.. wire.CutLayers],
                JoinToleranceMm = wire.HasJoinToleranceMm ? wire.JoinToleranceMm : defaults.JoinToleranceMm,
                MicroSegmentMm = wire.HasMicroSegmentMm ? wire.MicroSegmentMm : defaults.MicroSegmentMm,
                TinyFeatureMm = wire.HasTinyFeatureMm ? wire.TinyFeatureMm : defaults.TinyFeatureMm,
                CutterDiameterMm = wire.HasCutterDiameterMm ? wire.CutterDiameterMm : null,
                LeastWebMm = wire.HasLeastWebMm ? wire.LeastWebMm : defaults.LeastWebMm,
                PinDiametersMm = [.. wire.PinDiametersMm],
                HolesAreReamed = wire.HolesAreReamed,
                KerfMm = wire.HasKerfMm ? wire.KerfMm : null,
                GrindingStockMm = wire.HasGrindingStockMm ? wire.GrindingStockMm : null,
                FinishedLayer = wire.FinishedLayer.Length > 0 ? wire.FinishedLayer : null,
            };
    }
}
