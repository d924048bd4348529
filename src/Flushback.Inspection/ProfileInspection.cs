using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Geometry;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection;

/// <summary>The shop's check of a drawing that is to be cut.</summary>
public static class ProfileInspection
{
    /// <summary>Holds a drawing against what a shop needs.</summary>
    /// <param name="read">A drawing that was read, and what was said on the way.</param>
    /// <param name="settings">What to hold it against.</param>
    /// <param name="ct">Stops the inspection with <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="ArgumentException">The drawing could not be read: tell the issues of the reading instead.</exception>
    public static InspectionReport Run(DxfReadResult read, InspectionSettings settings, CancellationToken ct = default)
    {
        ArgumentNullException.ThrowIfNull(read);
        ArgumentNullException.ThrowIfNull(settings);
        DxfDrawing drawing =
            read.Drawing ?? throw new ArgumentException("The drawing could not be read.", nameof(read));
        ct.ThrowIfCancellationRequested();
        return new InspectionReport
        {
            Unit = drawing.Unit,
            CutLayers = CutLayers.Of(drawing, settings),
            Parts = [],
            OpenContours = [],
            Findings = [],
            Repairs = [.. read.Issues.Where(issue => !issue.IsFatal).Select(issue => issue.Sentence)],
            Bounds = Box.Empty,
            CutLengthMm = 0,
        };
    }
}
