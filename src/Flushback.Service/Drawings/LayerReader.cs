using System.Globalization;
using Flushback.Dxf;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;
using Flushback.Geometry;
using Flushback.Service.Errors;

namespace Flushback.Service.Drawings;

/// <summary>Takes outlines and circles from the layers of a drawing, and keeps a list of what was mended on the way.</summary>
/// <param name="drawing">A drawing that was read.</param>
/// <param name="joinToleranceMm">How far apart two ends may lie and still be joined.</param>
/// <param name="violations">Gathers what is wrong.</param>
/// <param name="cancellation">Stops the joining.</param>
internal sealed class LayerReader(
    DxfDrawing drawing,
    double joinToleranceMm,
    Violations violations,
    CancellationToken cancellation
)
{
    private readonly Dictionary<string, ChainResult> _read = new(StringComparer.OrdinalIgnoreCase);
    private readonly List<string> _repairs = [];

    /// <summary>What was mended or left aside so far, each in one sentence.</summary>
    public IReadOnlyList<string> Repairs => _repairs;

    /// <summary>The largest closed contour of a layer that must have one.</summary>
    /// <returns>The outline; null when there is none, which is then among the violations.</returns>
    public Outline? RequiredOutline(LayerRole role)
    {
        int before = violations.Count;
        Outline? outline = OptionalOutline(role);
        if (outline is null && violations.Count == before)
        {
            violations.Add(role.Field, "OUTLINE_MISSING", WhatIsMissing(role));
        }

        return outline;
    }

    /// <summary>The largest closed contour of a layer that may be missing, unless the caller named it.</summary>
    public Outline? OptionalOutline(LayerRole role)
    {
        List<Contour> contours = [.. Read(role).Contours.OrderByDescending(contour => contour.Outline.AreaMm2)];
        if (contours.Count == 0 && role.IsNamed && !violations.HasField(role.Field))
        {
            violations.Add(role.Field, "OUTLINE_MISSING", WhatIsMissing(role));
        }

        if (contours.Count > 1)
        {
            _repairs.Add(
                Sentence(
                    $"Layer '{role.Layer}' holds {contours.Count} closed outlines; the largest was taken for the {role.Part} and the rest left aside."
                )
            );
        }

        return contours.Count == 0 ? null : contours[0].Outline;
    }

    /// <summary>The circles of a layer; none when there is no such layer.</summary>
    public IEnumerable<Circle> Circles(LayerRole role) => Read(role).Circles.Select(circle => circle.Circle);

    /// <summary>The visible layers in words, for a maker who looks for the right one.</summary>
    public string LayersInWords() => VisibleLayers.InWords(drawing);

    private ChainResult Read(LayerRole role)
    {
        if (_read.TryGetValue(role.Layer, out ChainResult? known))
        {
            return known;
        }

        ChainResult result = DxfContours.ContoursOf(drawing, role.Layer, joinToleranceMm, cancellation);
        _read.Add(role.Layer, result);
        foreach (DxfIssue issue in result.Issues.Where(issue => issue.Code != DxfIssueCodes.LayerAbsent))
        {
            if (issue.IsFatal)
            {
                violations.Add(DrawingReader.DxfField, issue.Code, issue.Sentence);
            }
            else
            {
                _repairs.Add(issue.Sentence);
            }
        }

        return result;
    }

    private string WhatIsMissing(LayerRole role)
    {
        DxfLayer? layer = drawing.FindLayer(role.Layer);
        string fault = layer switch
        {
            null => $"The drawing has no layer '{role.Layer}'",
            { IsVisible: false } => $"Layer '{layer.Name}' is switched off or frozen",
            _ => $"Layer '{layer.Name}' holds no closed outline",
        };
        return $"{fault}, where the {role.Part}'s outline was looked for; {LayersInWords()}: draw the {role.Part} there or name another layer for it.";
    }

    private static string Sentence(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
