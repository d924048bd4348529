using Flushback.Geometry;

namespace Flushback.Reports.Print;

/// <summary>The lines of a hatch over a box. They lie on a lattice of the sheet, so hatches side by side meet.</summary>
internal static class HatchLines
{
    public static IEnumerable<Edge> Across(Box box, Hatch hatch)
    {
        Vector along = Vector.FromDirection(hatch.Direction);
        Vector across = along.Left;
        Point[] corners =
        [
            new(box.MinX, box.MinY),
            new(box.MaxX, box.MinY),
            new(box.MaxX, box.MaxY),
            new(box.MinX, box.MaxY),
        ];
        double from = corners.Min(corner => (corner - Point.Origin).Dot(along));
        double to = corners.Max(corner => (corner - Point.Origin).Dot(along));
        double first = Math.Ceiling(corners.Min(corner => (corner - Point.Origin).Dot(across)) / hatch.SpacingMm);
        double last = Math.Floor(corners.Max(corner => (corner - Point.Origin).Dot(across)) / hatch.SpacingMm);
        for (double line = first; line <= last; line++)
        {
            Point foot = Point.Origin + (across * (line * hatch.SpacingMm));
            yield return new Edge(foot + (along * from), foot + (along * to));
        }
    }
}
