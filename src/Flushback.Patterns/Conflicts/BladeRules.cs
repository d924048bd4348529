using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Conflicts;

/// <summary>Whether the blade has room in the handle, and its parts on the blade.</summary>
internal static class BladeRules
{
    private const double LeastSpineMm = 2;
    private const double LeastRicassoMm = 1;

    // A round that falls by more than it is long would bulge past the tip.
    private const double LeastOfFall = 1.02;

    // Shares of the way from the kick to the tip: the edge is the longest straight, the ricasso a short one.
    private const double LeastStraightEdge = 0.22;
    private const double MostRicasso = 0.18;

    /// <summary>The conflicts of the blade.</summary>
    public static IEnumerable<PatternConflict> Of(PatternLayout layout) =>
        [.. RearPin(layout), .. Length(layout), .. Point(layout), .. Edge(layout), .. Ricasso(layout)];

    private static IEnumerable<PatternConflict> RearPin(PatternLayout layout)
    {
        PatternParameters p = layout.Dimensions;
        double rear = p.Pins.RearBehindMm!.Value;
        double farthest =
            p.Handle.ClosedLengthMm - p.Handle.FrontMm!.Value - p.Pins.WallMm - (p.Pins.RearDiameterMm / 2);
        if (!(rear <= farthest))
        {
            yield return Conflict.Of(
                $"The rear pin lies {Said.Length(rear)} behind the pivot, but with a closed length of {Said.Length(p.Handle.ClosedLengthMm)} and a handle front of {Said.Length(p.Handle.FrontMm.Value)} the handle has room for it up to {Said.Length(farthest)} only; move the rear pin or lengthen the handle.",
                "pins.rear_behind_mm",
                "handle.closed_length_mm",
                "handle.front_mm"
            );
        }
    }

    private static IEnumerable<PatternConflict> Length(PatternLayout layout)
    {
        PatternParameters p = layout.Dimensions;
        double longest =
            p.Handle.ClosedLengthMm - (2 * p.Handle.FrontMm!.Value) - p.Handle.WellClearanceMm - BladeLayout.ButtWallMm;
        if (!(p.Blade.LengthMm <= longest + RoundingMm))
        {
            yield return Conflict.Of(
                $"A blade length of {Said.Length(p.Blade.LengthMm!.Value)} does not fold into a closed length of {Said.Length(p.Handle.ClosedLengthMm)} with a handle front of {Said.Length(p.Handle.FrontMm.Value)}; there is room for {Said.Length(longest)}: shorten the blade or lengthen the handle.",
                layout.Given.Handle.OverallLengthMm is null
                    ? ["blade.length_mm", "handle.closed_length_mm", "handle.front_mm"]
                    : ["handle.overall_length_mm", "blade.length_mm", "handle.closed_length_mm", "handle.front_mm"]
            );
        }
    }

    private const double RoundingMm = 1e-9;

    private static IEnumerable<PatternConflict> Point(PatternLayout layout)
    {
        BladeLayout blade = layout.Blade;
        double fall = layout.Notch.SpineMm - blade.Tip.Y;
        double width = layout.Dimensions.Blade.WidthMm!.Value;
        if (!(blade.PointMm >= LeastOfFall * fall))
        {
            yield return Conflict.Of(
                $"A point length of {Said.Length(blade.PointMm)} is too short for the spine of a blade {Said.Length(width)} wide to fall to the tip; make it {Said.Length(LeastOfFall * fall)} or more, or the blade narrower.",
                "blade.point_mm",
                "blade.width_mm"
            );
        }

        double longest = blade.TipX - layout.Notch.ShoulderRound.X - LeastSpineMm;
        if (!(blade.PointMm <= longest))
        {
            yield return Conflict.Of(
                $"A point length of {Said.Length(blade.PointMm)} leaves no straight spine on a blade length of {Said.Length(layout.Dimensions.Blade.LengthMm!.Value)}; make the point {Said.Length(longest)} long or less, or the blade longer.",
                "blade.point_mm",
                "blade.length_mm"
            );
        }
    }

    private static IEnumerable<PatternConflict> Edge(PatternLayout layout)
    {
        BladeLayout blade = layout.Blade;
        double rise = blade.Tip.Y - blade.EdgeY;
        double width = layout.Dimensions.Blade.WidthMm!.Value;
        if (!blade.Shape.HasStraightEdge && !(blade.SweepMm >= LeastOfFall * rise))
        {
            yield return Conflict.Of(
                $"An edge sweep of {Said.Length(blade.SweepMm)} is too short for the edge of a blade {Said.Length(width)} wide to rise to the tip; make it {Said.Length(LeastOfFall * rise)} or more, or the blade narrower.",
                "blade.sweep_mm",
                "blade.width_mm"
            );
        }

        double straight = blade.TipX - blade.SweepMm - blade.EdgeStartX;
        double least = LeastStraightEdge * (blade.TipX - layout.Tang.KickContact.X);
        if (!(straight >= least))
        {
            double ricasso = layout.Dimensions.Blade.RicassoMm;
            double length = layout.Dimensions.Blade.LengthMm!.Value;
            yield return Conflict.Of(
                blade.Shape.HasStraightEdge
                    ? $"A ricasso of {Said.Length(ricasso)} leaves too little edge on a blade length of {Said.Length(length)}; make the ricasso shorter or the blade longer."
                    : $"A ricasso of {Said.Length(ricasso)} and an edge sweep of {Said.Length(blade.SweepMm)} leave too little straight edge on a blade length of {Said.Length(length)}; make one of the two shorter, or the blade longer.",
                blade.Shape.HasStraightEdge
                    ? ["blade.ricasso_mm", "blade.length_mm"]
                    : ["blade.ricasso_mm", "blade.sweep_mm", "blade.length_mm"]
            );
        }
    }

    private static IEnumerable<PatternConflict> Ricasso(PatternLayout layout)
    {
        BladeParameters p = layout.Dimensions.Blade;
        double kick = layout.Dimensions.Tang.KickHeightMm!.Value;
        double least = layout.Blade.KickFoot.X + LeastRicassoMm + (2 * p.ChoilRadiusMm) - layout.Tang.KickContact.X;
        if (!(p.RicassoMm >= least))
        {
            yield return Conflict.Of(
                $"A ricasso of {Said.Length(p.RicassoMm)} is too short for a kick height of {Said.Length(kick)} and a choil radius of {Said.Length(p.ChoilRadiusMm)}; make the ricasso {Said.Length(least)} long or more, or the choil smaller.",
                "blade.ricasso_mm",
                "tang.kick_height_mm",
                "blade.choil_radius_mm"
            );
        }

        double longest = MostRicasso * (layout.Blade.TipX - layout.Tang.KickContact.X);
        if (!(p.RicassoMm <= longest))
        {
            yield return Conflict.Of(
                $"A ricasso of {Said.Length(p.RicassoMm)} is too long for a blade length of {Said.Length(p.LengthMm!.Value)}; make it {Said.Length(longest)} or less.",
                "blade.ricasso_mm",
                "blade.length_mm"
            );
        }
    }
}
