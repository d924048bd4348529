using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Findings;

/// <summary>
/// The stock left to trim on the spring's back, over the handle's line: there should be more at the front than behind,
/// so that spring and handle can be ground to one line (common practice, no source).
/// </summary>
internal static class StockRule
{
    private const double NoticeableMm = 0.02;
    private const int Stations = 9;

    /// <summary>The finding, or null when the order is right or no handle was given.</summary>
    public static Finding? Judge(BenchReport report)
    {
        Knife knife = report.Placement.Knife;
        if (knife.Handle is not { } handle)
        {
            return null;
        }

        Outline spring = knife.Spring.Transformed(knife.SpringAt(report.Stops[0].SpringRotation));
        double front = knife.DialPoint.X;
        double rear = knife.RearPin?.Centre.X ?? knife.CentrePin.Centre.X;
        double? atFront = StockAt(front, spring, handle);
        (double Stock, double X) most = (double.NegativeInfinity, rear);
        for (int i = 1; i < Stations; i++)
        {
            double x = front + ((rear - front) * i / (Stations - 1));
            if (StockAt(x, spring, handle) is { } stock && stock > most.Stock)
            {
                most = (stock, x);
            }
        }

        return atFront is not { } there || most.Stock <= there + NoticeableMm
            ? null
            : new Finding(
                FindingCodes.StockOrder,
                Severity.Warning,
                FormattableString.Invariant(
                    $"The spring's back stands {Said.Reading(most.Stock)} over the handle's line {knife.DialPoint.X - most.X:0.0} mm behind the dial but only {Said.Reading(there)} at the dial: there is less stock to trim in front than behind."
                ),
                "Leave more on the front of the spring's back than further back, so that it can be trimmed to one line.",
                Stop.Open,
                new Point(most.X, most.Stock + (TopAt(most.X, handle) ?? 0)),
                most.Stock - there,
                NoticeableMm,
                "mm"
            );
    }

    private static double? StockAt(double x, Outline spring, Outline handle) => TopAt(x, spring) - TopAt(x, handle);

    private static double? TopAt(double x, Outline outline) =>
        OutlineTop.Above(outline, new Point(x, outline.Bounds.MinY - 1), new Vector(0, 1))?.At.Y;
}
