using Flushback.Service.Errors;
using Flushback.Service.Limits;
using Google.Protobuf;

namespace Flushback.Service.Validation;

/// <summary>What must hold for a drawing before it is read.</summary>
internal static class DrawingRules
{
    /// <summary>Gathers what is missing or cannot be.</summary>
    public static void Check(Wire.KnifeDrawing drawing, FieldPath path, ServiceLimits limits, Violations violations)
    {
        CheckFile(drawing.Dxf, path.Of("dxf"), violations);
        if (drawing.Layers is { } layers)
        {
            FieldPath at = path.Of("layers");
            NameRules.CheckLayer(layers.Blade, at.Of("blade"), limits, violations);
            NameRules.CheckLayer(layers.Spring, at.Of("spring"), limits, violations);
            NameRules.CheckLayer(layers.Handle, at.Of("handle"), limits, violations);
            NameRules.CheckLayer(layers.Pins, at.Of("pins"), limits, violations);
        }
    }

    /// <summary>Gathers a file without bytes.</summary>
    public static void CheckFile(ByteString dxf, FieldPath path, Violations violations)
    {
        if (dxf.IsEmpty)
        {
            violations.Add(
                $"{path}",
                "EMPTY",
                "The drawing is empty: there is not a byte in it; save it again as DXF."
            );
        }
    }
}
