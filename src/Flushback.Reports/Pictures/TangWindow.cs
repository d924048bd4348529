using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;

namespace Flushback.Reports.Pictures;

/// <summary>The part of the knife worth a close look: the tang in any position, the nose and room for the dial.</summary>
internal static class TangWindow
{
    private const double Aspect = 4.0 / 3;

    /// <summary>How much of the tang's reach is seen below the pivot.</summary>
    private const double BelowShare = 0.66;

    /// <summary>Height the dial takes on top, as a share of the picture's width.</summary>
    private const double DialShare = DialMark.Height / StopPicture.Width;

    /// <summary>The same window for every stop of a report, so that the pictures can be laid side by side.</summary>
    public static Box Of(BenchReport report)
    {
        double reach = Reach(report.Placement.Knife);
        double below = BelowShare * reach;
        double back = HighestBack(report);

        // Wide enough for the tang to turn in, and high enough for the dial on the highest back to fit on top.
        double width = Math.Max(2.3 * reach, (back + below) / ((1 / Aspect) - DialShare));
        double top = back + (DialShare * width);
        return new Box(-width / 2, top - (width / Aspect), width / 2, top);
    }

    private static double HighestBack(BenchReport report)
    {
        Knife knife = report.Placement.Knife;
        return report
            .Stops.Select(stop => knife.SpringAt(stop.SpringRotation).Apply(knife.DialPoint).Y)
            .Append(knife.DialPoint.Y)
            .Max();
    }

    private static double Reach(Knife knife)
    {
        IEnumerable<Point> tang = knife
            .Blade.Edges.Zip(knife.BladeFaces)
            .Where(named =>
                named.Second is not (BladeFace.Unknown or BladeFace.Ricasso or BladeFace.Edge or BladeFace.Spine)
            )
            .SelectMany(named => (Point[])[named.First.Start, named.First.End]);
        return tang.Select(point => point.DistanceTo(Point.Origin))
            .Append(2 * knife.PivotRadiusMm)
            .Append(knife.DialPoint.DistanceTo(Point.Origin))
            .Max();
    }
}
