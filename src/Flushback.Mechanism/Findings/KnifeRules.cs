using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Findings;

/// <summary>What can be amiss with the knife as a whole: corner gap, edge, tip, tail, back, drawing.</summary>
internal static class KnifeRules
{
    /// <summary>The findings that belong to no single reading.</summary>
    public static IEnumerable<Finding> Judge(BenchReport report, BenchSolver solver) =>
        new[]
        {
            CornerTouching(report),
            EdgeNearSpring(report),
            EdgeTouchesOnTheWay(report),
            TailContact(report),
            TipProud(report),
            StockRule.Judge(report),
            DrawnOverlap(report, solver),
            OpenBeforeShoulder(report),
        }
            .Where(finding => finding is not null)
            .Select(finding => finding!);

    private static Finding? CornerTouching(BenchReport report)
    {
        double limit = report.Settings.LeastCornerGapMm;
        return report.CornerGap is not { } gap || gap.GapMm >= limit
            ? null
            : new Finding(
                FindingCodes.CornerTouching,
                Severity.Warning,
                $"The nose comes within {Said.Length(gap.GapMm)} of the notch's inner corner when open; the corner must stay open, or dirt there holds the blade off its stop.",
                "Undercut the shoulder to about 70 degrees, cut a small hollow in the corner, or round the spring's lower front corner.",
                Stop.Open,
                gap.Corner,
                gap.GapMm,
                limit,
                "mm"
            );
    }

    private static Finding? EdgeNearSpring(BenchReport report)
    {
        LeastClearance edge = report.Clearances.EdgeClosed;
        double limit = report.Settings.LeastEdgeClearanceMm;
        return edge.DistanceMm >= limit
            ? null
            : new Finding(
                FindingCodes.EdgeNearSpring,
                edge.DistanceMm <= 0 ? Severity.Fault : Severity.Warning,
                $"The edge comes within {Said.Length(edge.DistanceMm)} of the spring when closed and will be dulled by it.",
                "Leave the kick higher, relieve the belly of the spring, or make the blade narrower there.",
                Stop.Closed,
                edge.At,
                edge.DistanceMm,
                limit,
                "mm"
            );
    }

    private static Finding? EdgeTouchesOnTheWay(BenchReport report)
    {
        LeastClearance edge = report.Clearances.EdgeLeast;
        bool onTheWay = edge.DistanceMm <= 0 && report.Clearances.EdgeClosed.DistanceMm > 0;
        return !onTheWay
            ? null
            : new Finding(
                FindingCodes.EdgeNearSpring,
                Severity.Fault,
                $"The edge touches the spring at a blade angle of {Said.Degrees(edge.BladeAngle.Degrees)}, on the way between the stops.",
                "Give the tang or the kick more height there, or relieve the spring.",
                null,
                edge.At,
                edge.DistanceMm,
                report.Settings.LeastEdgeClearanceMm,
                "mm"
            );
    }

    private static Finding? TailContact(BenchReport report)
    {
        LeastClearance tail = report.Clearances.TailLeast;
        return tail.DistanceMm > 0
            ? null
            : new Finding(
                FindingCodes.TailContact,
                Severity.Fault,
                $"The blade meets the spring behind the centre pin at a blade angle of {Said.Degrees(tail.BladeAngle.Degrees)}.",
                "Leave the kick higher or make the spring slimmer behind the centre pin.",
                null,
                tail.At,
                tail.DistanceMm,
                0,
                "mm"
            );
    }

    private static Finding? TipProud(BenchReport report)
    {
        Point tip = report.Clearances.TipClosedAt;
        if (report.Clearances.TipDepthMm is not { } depth)
        {
            return new Finding(
                FindingCodes.NoHandle,
                Severity.Note,
                "No handle outline was given, so whether the tip is buried when closed is not known.",
                "Draw the handle's outline on its own layer and name that layer.",
                Stop.Closed,
                tip
            );
        }

        double limit = report.Settings.LeastTipDepthMm;
        return depth >= limit
            ? null
            : new Finding(
                FindingCodes.TipProud,
                depth < 0 ? Severity.Fault : Severity.Warning,
                depth < 0
                    ? $"The tip stands {Said.Length(-depth)} out of the handle when closed."
                    : $"The tip lies only {Said.Length(depth)} inside the handle when closed.",
                "Take metal off the kick to lower the tip, deepen the handle there, or shorten the tip last, in the handle.",
                Stop.Closed,
                tip,
                depth,
                limit,
                "mm"
            );
    }

    /// <summary>Overlap of the two as drawn, measured as the depth by which the spring would have to give way.</summary>
    private static Finding? DrawnOverlap(BenchReport report, BenchSolver solver)
    {
        Placement placement = report.Placement;
        SpringPose pose = solver.PoseAt(placement.DrawnBladeAngle, Angle.Zero);
        double below = pose.Lowest.Radians * Math.Abs(pose.Support.SpringLever);
        double above = -pose.Highest.Radians * Math.Abs(pose.Support.SpringLever);
        double depth = Math.Max(below, above);
        return depth <= report.Settings.ContactToleranceMm
            ? null
            : new Finding(
                FindingCodes.DrawnOverlap,
                Math.Abs(placement.DrawnBladeAngle.Degrees) < 1 ? Severity.Warning : Severity.Note,
                $"As drawn, blade and spring overlap by {Said.Length(depth)}.",
                "The readings are taken where the parts really come to rest; if the overlap is not stock left for fitting, correct the drawing.",
                null,
                pose.Support.At,
                depth,
                report.Settings.ContactToleranceMm,
                "mm"
            );
    }

    private static Finding? OpenBeforeShoulder(BenchReport report)
    {
        StopReading open = report.Stops[0];
        double before = open.ShoulderAngle is { } shoulder ? (open.RestAngle - shoulder).Degrees : 0;
        return !open.Rests || before < 0.05
            ? null
            : new Finding(
                FindingCodes.OpenBeforeShoulder,
                Severity.Note,
                $"Open, the spring holds the blade {Said.Degrees(before)} before the shoulder butts on the spring's end face: it rests on the open flat alone.",
                "If the shoulder is to stop the blade, let the open flat touch at its rear only.",
                Stop.Open,
                open.Contacts.IsEmpty ? null : open.Contacts[0].At,
                before,
                0,
                "deg"
            );
    }
}
