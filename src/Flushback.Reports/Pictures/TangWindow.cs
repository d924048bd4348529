using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;

namespace Flushback.Reports.Pictures;

/// <summary>The part of the knife worth a close look: the tang in any position, the nose and room for the dial.</summary>
internal static class TangWindow
{
    private const double Aspect = 4.0 / 3;

    /// <summary>The same window for every stop of a report, so that the pictures can be laid side by side.</summary>
    public static Box Of(BenchReport report)
    {
        Knife knife = report.Placement.Knife;
        double reach = Reach(report);
        double below = -0.66 * reach;
        double above = knife.DialPoint.Y + (0.62 * reach);
        double height = Math.Max(above - below, 2.3 * reach / Aspect);
        double width = height * Aspect;
        return new Box(-width / 2, above - height, width / 2, above);
    }

    private static double Reach(BenchReport report)
    {
        Knife knife = report.Placement.Knife;
        IEnumerable<Point> tang = knife
            .Blade.Edges.Zip(knife.BladeFaces)
            .Where(named => named.Second is not (BladeFace.Unknown or BladeFace.Edge or BladeFace.Spine))
            .SelectMany(named => (Point[])[named.First.Start, named.First.End]);
        IEnumerable<Point> contacts = report.Stops.SelectMany(stop => stop.Contacts).Select(contact => contact.At);
        return tang.Concat(contacts)
            .Select(point => point.DistanceTo(Point.Origin))
            .Append(2 * knife.PivotRadiusMm)
            .Append(knife.DialPoint.DistanceTo(Point.Origin))
            .Max();
    }
}
