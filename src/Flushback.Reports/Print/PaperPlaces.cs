using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Geometry;
using PdfSharp.Drawing;

namespace Flushback.Reports.Print;

/// <summary>From millimetres with y up to the points, a 72nd of an inch each, with y down, in which pages are drawn.</summary>
internal sealed class PaperPlaces(SheetFormat format)
{
    private const double PointMm = DrawingUnits.InchMm / 72;

    public static double PointsOf(double mm) => mm / PointMm;

    public XPoint Of(Point place)
    {
        if (!place.IsFinite)
        {
            throw new ArgumentException($"There is no place {place} on paper.", nameof(place));
        }

        return new(PointsOf(place.X), PointsOf(format.HeightMm - place.Y));
    }

    public XRect Of(Box box) => new(Of(new Point(box.MinX, box.MaxY)), Of(new Point(box.MaxX, box.MinY)));

    /// <summary>Chains of edges as one path; within it, what lies in an odd number of closed chains is inside.</summary>
    public XGraphicsPath PathOf(ImmutableArray<ImmutableArray<Edge>> chains, bool isClosed)
    {
        XGraphicsPath path = new() { FillMode = XFillMode.Alternate };
        foreach (ImmutableArray<Edge> chain in chains)
        {
            path.StartFigure();
            for (int i = 0; i < chain.Length; i++)
            {
                if (i > 0 && chain[i].Start != chain[i - 1].End)
                {
                    path.StartFigure();
                }

                Add(path, chain[i]);
            }

            if (isClosed)
            {
                path.CloseFigure();
            }
        }

        return path;
    }

    private void Add(XGraphicsPath path, Edge edge)
    {
        if (!edge.IsArc)
        {
            path.AddLine(Of(edge.Start), Of(edge.End));
            return;
        }

        foreach (Bezier curve in ArcBeziers.Along(edge))
        {
            path.AddBezier(Of(curve.Start), Of(curve.FirstControl), Of(curve.SecondControl), Of(curve.End));
        }
    }
}
