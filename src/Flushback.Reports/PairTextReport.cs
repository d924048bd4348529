using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Patterns.Pairs;
using Flushback.Reports.Terminal;
using Flushback.Reports.Wording;

namespace Flushback.Reports;

/// <summary>The second blade of a pattern as plain text: how the blades pass each other, then what the dial reads over it.</summary>
public static class PairTextReport
{
    /// <summary>Writes the report; the same input gives the same text, lines ended by a single line feed.</summary>
    /// <param name="name">What the maker calls the knife.</param>
    /// <param name="pair">Both blades.</param>
    /// <param name="bench">What the bench shows of the second blade.</param>
    /// <param name="handle">The second blade in its handle, when asked for.</param>
    public static string Write(string name, DrawnPair pair, BenchReport bench, HandleReport? handle)
    {
        using TerminalPage page = new(TextReport.Columns);
        PairClearance clearance = pair.Clearance;
        Measure measure = Measure.Plain;
        page.Section("Blade past blade");
        page.Line(
            FormattableString.Invariant(
                $"{Told(pair.Parameters.Arrangement)} Sideways there is {measure.Mm(clearance.SidewaysMm)} mm ({measure.Thou(clearance.SidewaysMm)} thou) between the blades' layers; {measure.Mm(clearance.LeastMm)} mm ({measure.Thou(clearance.LeastMm)} thou) is wanted. {(clearance.AreLayered ? "So they pass side by side, whatever the plane of the drawing shows." : "So they have to keep clear of each other in the plane of the drawing.")}"
            )
        );
        page.Gap();
        page.Table(
            ["first blade", "second blade", "mm", "thou", "at, deg"],
            clearance.Cases.Select(found =>
                (string[])
                    [
                        First(found.Kind),
                        Second(found.Kind),
                        found.Overlaps ? "overlap" : measure.Mm(found.DistanceMm),
                        found.Overlaps ? "" : measure.Thou(found.DistanceMm),
                        $"{measure.Number(found.FirstAngle.Degrees, 1)} and {measure.Number(found.SecondAngle.Degrees, 1)}",
                    ]
            )
        );
        page.Gap();
        return page + "\n" + TextReport.Write($"{name}, second blade", bench, [], handle);
    }

    private static string Told(Arrangement arrangement) =>
        arrangement == Arrangement.SharedSpring
            ? "Both blades bear on one spring; in the handle, where it bends under both, it is not reckoned."
            : "Each blade has a spring of its own.";

    private static string First(ClearanceKind kind) =>
        kind switch
        {
            ClearanceKind.FirstTurnsSecondClosed or ClearanceKind.FirstTurnsSecondOpen => "turns",
            ClearanceKind.SecondTurnsFirstOpen => "open",
            _ => "closed",
        };

    private static string Second(ClearanceKind kind) =>
        kind switch
        {
            ClearanceKind.SecondTurnsFirstClosed or ClearanceKind.SecondTurnsFirstOpen => "turns",
            ClearanceKind.FirstTurnsSecondOpen => "open",
            _ => "closed",
        };
}
