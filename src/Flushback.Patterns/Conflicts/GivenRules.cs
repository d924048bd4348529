using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Conflicts;

/// <summary>Numbers that say one thing twice, or that the family has no use for.</summary>
internal static class GivenRules
{
    // What rounding to a hundredth of a millimetre may leave between numbers that agree.
    private const double AgreeMm = 0.02;

    /// <summary>The conflicts among the numbers as given.</summary>
    public static IEnumerable<PatternConflict> Of(PatternLayout layout)
    {
        PatternParameters p = layout.Given;
        if (
            p is { Handle.OverallLengthMm: { } overall, Blade.LengthMm: { } length }
            && Math.Abs(overall - p.Handle.ClosedLengthMm - length) > AgreeMm
        )
        {
            yield return Conflict.Of(
                $"The overall length of {Said.Length(overall)} is not the closed length of {Said.Length(p.Handle.ClosedLengthMm)} and the blade length of {Said.Length(length)} together; leave the overall length or the blade length out.",
                "handle.overall_length_mm",
                "handle.closed_length_mm",
                "blade.length_mm"
            );
        }

        double actual = layout.Dimensions.Blade.WidthMm!.Value;
        if (
            p is { Blade.WidthMm: { } width, Tang: { OpenFlatDepthMm: { } flat, KickHeightMm: { } kick } }
            && Math.Abs(actual - width) > AgreeMm
        )
        {
            yield return Conflict.Of(
                $"With an open flat depth of {Said.Length(flat)} and a kick height of {Said.Length(kick)} the blade is {Said.Length(actual)} wide, not {Said.Length(width)} as its width says; leave one of the three out.",
                "blade.width_mm",
                "tang.open_flat_depth_mm",
                "tang.kick_height_mm"
            );
        }

        if (layout.Blade.Shape.HasStraightEdge && p.Blade.SweepMm is { } sweep)
        {
            yield return Conflict.Of(
                $"{layout.Blade.Shape.Name} has a straight edge, so an edge sweep of {Said.Length(sweep)} has no meaning; leave it out or choose another family.",
                "blade.sweep_mm",
                "blade.family"
            );
        }

        if (p.Spring.RearStockMm > p.Spring.FrontStockMm)
        {
            yield return Conflict.Of(
                $"The rear stock of {Said.Length(p.Spring.RearStockMm)} is more than the front stock of {Said.Length(p.Spring.FrontStockMm)}, so the back would not trim to one line; leave as much in front or more.",
                "spring.rear_stock_mm",
                "spring.front_stock_mm"
            );
        }
    }
}
