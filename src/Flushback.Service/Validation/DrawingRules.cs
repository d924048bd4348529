using System.Globalization;
using Flushback.Service.Errors;
using Flushback.Service.Limits;

namespace Flushback.Service.Validation;

/// <summary>What must hold for a drawing before it is read.</summary>
internal static class DrawingRules
{
    /// <summary>Gathers what is missing or cannot be.</summary>
    public static void Check(Wire.KnifeDrawing drawing, FieldPath path, ServiceLimits limits, Violations violations)
    {
        if (drawing.Dxf.IsEmpty)
        {
            violations.Add(
                $"{path.Of("dxf")}",
                "EMPTY",
                "The drawing is empty: there is not a byte in it; save it again as DXF."
            );
        }

        if (drawing.Layers is { } layers)
        {
            FieldPath at = path.Of("layers");
            CheckLayer(layers.Blade, at.Of("blade"), limits, violations);
            CheckLayer(layers.Spring, at.Of("spring"), limits, violations);
            CheckLayer(layers.Handle, at.Of("handle"), limits, violations);
            CheckLayer(layers.Pins, at.Of("pins"), limits, violations);
        }
    }

    private static void CheckLayer(string layer, FieldPath path, ServiceLimits limits, Violations violations)
    {
        if (layer.Length > limits.NameLength)
        {
            violations.Add(
                $"{path}",
                "TOO_LONG",
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"The layer name is {layer.Length} characters long; no more than {limits.NameLength} are read."
                )
            );
        }

        if (layer.Any(char.IsControl))
        {
            violations.Add(
                $"{path}",
                "CONTROL_CHARACTER",
                "The layer name holds a control character; no layer has one."
            );
        }
    }
}
