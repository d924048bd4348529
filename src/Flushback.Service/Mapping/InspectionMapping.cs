using Flushback.Geometry;
using Flushback.Inspection;
using Flushback.Inspection.Repair;

namespace Flushback.Service.Mapping;

/// <summary>An inspection to the contract.</summary>
internal static class InspectionMapping
{
    /// <summary>To the contract.</summary>
    /// <param name="report">What the shop gets.</param>
    /// <param name="name">Name of the drawing.</param>
    /// <param name="copy">The repaired copy, when asked for.</param>
    public static Wire.InspectReport ToWire(this InspectionReport report, string name, RepairedDrawing? copy)
    {
        Wire.InspectReport wire = new()
        {
            Name = name,
            Verdict = report.IsClean ? Wire.Verdict.Good : Wire.Verdict.NeedsWork,
            Unit = report.Unit.ToWire(),
            CutLengthMm = report.CutLengthMm,
        };
        wire.CutLayers.AddRange(report.CutLayers);
        wire.Parts.AddRange(report.Parts.Select(ToWire));
        wire.OpenContours.AddRange(report.OpenContours.Select(ToWire));
        wire.Findings.AddRange(report.Findings.Select(ToWire));
        wire.Repairs.AddRange(report.Repairs);
        wire.Changes.AddRange(copy?.Repairs ?? []);
        wire.LeftAsIs.AddRange(copy?.Left ?? []);
        wire.CutPaths.AddRange(report.CutPaths.Select(ToWire));
        if (report.Bounds != Box.Empty)
        {
            wire.BoxLow = new Point(report.Bounds.MinX, report.Bounds.MinY).ToWire();
            wire.BoxHigh = new Point(report.Bounds.MaxX, report.Bounds.MaxY).ToWire();
        }

        return wire;
    }

    private static Wire.InspectedPart ToWire(InspectedPart part) =>
        new()
        {
            Layer = part.Layer,
            Contour = part.Contour.ToWire(),
            Handles = { part.Handles },
            Holes = { part.Holes.Select(ToWire) },
            AreaMm2 = part.AreaMm2,
            CutLengthMm = part.CutLengthMm,
            ThinnestWeb = part.ThinnestWeb is { } web
                ? new Wire.WebMeasure
                {
                    ThicknessMm = web.ThicknessMm,
                    From = web.From.ToWire(),
                    To = web.To.ToWire(),
                }
                : null,
            LeastInnerRadius = part.LeastInnerRadius is { } inner
                ? new Wire.InnerRadius
                {
                    RadiusMm = inner.RadiusMm,
                    At = inner.At.ToWire(),
                    Handles = { inner.Handles },
                }
                : null,
            LeastStock = part.LeastStock is { } stock
                ? new Wire.StockMeasure { LeastMm = stock.LeastMm, At = stock.At.ToWire() }
                : null,
        };

    private static Wire.InspectedHole ToWire(InspectedHole hole) =>
        new()
        {
            Layer = hole.Layer,
            Contour = hole.Contour.ToWire(),
            Circle = hole.Circle?.ToWire(),
            Handles = { hole.Handles },
            Fit = hole.Fit is { } fit
                ? new Wire.PinFit
                {
                    PinMm = fit.PinMm,
                    PinName = fit.PinName,
                    LowestMm = fit.LowestMm,
                    HighestMm = fit.HighestMm,
                    HoleMm = fit.HoleMm,
                    Fits = fit.Fits,
                }
                : null,
        };

    private static Wire.OpenContour ToWire(OpenContour contour) =>
        new()
        {
            Layer = contour.Layer,
            Handles = { contour.Handles },
            Start = contour.Start.ToWire(),
            End = contour.End.ToWire(),
            LengthMm = contour.LengthMm,
        };

    private static Wire.CutPath ToWire(CutPath path) =>
        new()
        {
            Layer = path.Layer,
            Path = path.Path.ToWire(),
            IsHole = path.IsHole,
            Part = path.Part,
        };

    private static Wire.InspectFinding ToWire(InspectionFinding finding)
    {
        Wire.InspectFinding wire = new()
        {
            Code = finding.Code,
            Severity = ToWire(finding.Severity),
            Message = finding.Message,
            Advice = finding.Advice,
            Handles = { finding.Handles },
            Layer = finding.Layer,
            At = finding.At?.ToWire(),
            Unit = finding.Unit,
        };
        if (finding.Value is { } value)
        {
            wire.Value = value;
        }

        if (finding.Limit is { } limit)
        {
            wire.Limit = limit;
        }

        return wire;
    }

    private static Wire.Severity ToWire(Severity severity) =>
        severity switch
        {
            Severity.Note => Wire.Severity.Note,
            Severity.Warning => Wire.Severity.Warning,
            _ => Wire.Severity.Fault,
        };
}
