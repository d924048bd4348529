using Flushback.Service.Errors;
using Flushback.Service.Limits;
using static Flushback.Service.Validation.Ranges;

namespace Flushback.Service.Validation;

/// <summary>What must hold for an inspection: layers, tolerances, cutter, pins, kerf, stock.</summary>
internal static class InspectRules
{
    // Ends a millimetre apart are no joint that anyone drew: a larger tolerance is a slip of the unit.
    private const double LargestJoinMm = 1;

    // No cutter, pin, web or segment of a folding knife is as large, and no kerf or stock on its profile.
    private const double LargestFeatureMm = 100;
    private const double LargestCutMm = 20;

    /// <summary>Gathers everything wrong with the settings of a request.</summary>
    public static void Check(Wire.InspectRequest request, ServiceLimits limits, Violations violations)
    {
        FieldPath path = new(null, "settings");
        Wire.InspectionSettings settings = request.Settings ?? new Wire.InspectionSettings();
        CheckLayers(settings, path, limits, violations);
        CheckLengths(settings, path, new Ranges(violations));
        if (request.Artifacts.Contains(Wire.ArtifactKind.CutPathDxf) && !settings.HasKerfMm)
        {
            violations.Add(
                $"{path.Of("kerf_mm")}",
                "MISSING",
                "A drawing with the cut path is asked for, but no kerf is given; say how wide the kerf is."
            );
        }
    }

    private static void CheckLayers(
        Wire.InspectionSettings settings,
        FieldPath path,
        ServiceLimits limits,
        Violations violations
    )
    {
        string finished = settings.FinishedLayer;
        NameRules.CheckLayer(finished, path.Of("finished_layer"), limits, violations);
        for (int i = 0; i < settings.CutLayers.Count; i++)
        {
            FieldPath at = path.Of("cut_layers", i);
            string layer = settings.CutLayers[i];
            NameRules.CheckLayer(layer, at, limits, violations);
            if (layer.Length == 0)
            {
                violations.Add($"{at}", "EMPTY", $"{at} names no layer; name one or leave it out.");
            }
            else if (string.Equals(layer, finished, StringComparison.OrdinalIgnoreCase))
            {
                violations.Add(
                    $"{path.Of("finished_layer")}",
                    "SAME_LAYER",
                    $"Layer '{finished}' is named both as cut and as finished; draw each outline on a layer of its own."
                );
            }
        }
    }

    private static void CheckLengths(Wire.InspectionSettings settings, FieldPath path, Ranges ranges)
    {
        ranges.Check(
            path.Of("join_tolerance_mm"),
            Set(settings.HasJoinToleranceMm, settings.JoinToleranceMm),
            0,
            LargestJoinMm
        );
        ranges.Check(
            path.Of("micro_segment_mm"),
            Set(settings.HasMicroSegmentMm, settings.MicroSegmentMm),
            0,
            LargestFeatureMm
        );
        ranges.Check(
            path.Of("tiny_feature_mm"),
            Set(settings.HasTinyFeatureMm, settings.TinyFeatureMm),
            0,
            LargestFeatureMm
        );
        ranges.Check(
            path.Of("cutter_diameter_mm"),
            Set(settings.HasCutterDiameterMm, settings.CutterDiameterMm),
            LeastAboveZero,
            LargestFeatureMm
        );
        ranges.Check(path.Of("least_web_mm"), Set(settings.HasLeastWebMm, settings.LeastWebMm), 0, LargestFeatureMm);
        for (int i = 0; i < settings.PinDiametersMm.Count; i++)
        {
            ranges.Check(path.Of("pin_diameters_mm", i), settings.PinDiametersMm[i], LeastAboveZero, LargestFeatureMm);
        }

        ranges.Check(path.Of("kerf_mm"), Set(settings.HasKerfMm, settings.KerfMm), LeastAboveZero, LargestCutMm);
        ranges.Check(
            path.Of("grinding_stock_mm"),
            Set(settings.HasGrindingStockMm, settings.GrindingStockMm),
            0,
            LargestCutMm
        );
    }
}
