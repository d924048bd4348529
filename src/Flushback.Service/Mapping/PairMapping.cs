using Flushback.Patterns.Pairs;
using Flushback.Patterns.Parameters;

namespace Flushback.Service.Mapping;

/// <summary>A second blade between the contract and the core.</summary>
internal static class PairMapping
{
    /// <summary>True when two blades are asked for.</summary>
    public static bool HasTwoBlades(this Wire.GenerateRequest request) =>
        request.Arrangement is Wire.Arrangement.SharedSpring or Wire.Arrangement.TwoSprings;

    /// <summary>The page with its second blade; the request has two.</summary>
    public static PairParameters ToPair(this Wire.GenerateRequest request) =>
        new()
        {
            First = request.Pattern.ToParameters(),
            Arrangement =
                request.Arrangement == Wire.Arrangement.SharedSpring
                    ? Arrangement.SharedSpring
                    : Arrangement.TwoSprings,
            Second = ToSecond(request.SecondBlade ?? new Wire.SecondBlade()),
        };

    /// <summary>The second blade's numbers as a page, whose limits they have.</summary>
    public static Wire.Pattern PageOf(Wire.SecondBlade second) =>
        new()
        {
            Tang = second.Tang,
            Blade = second.Blade,
            Readings = second.Readings,
        };

    /// <summary>The second blade as drawn, to the contract.</summary>
    public static Wire.DrawnSecondBlade ToWire(this DrawnPair pair, Wire.CheckReport report) =>
        new()
        {
            Pattern = pair.Second.ToWire(),
            Report = report,
            AtOtherEnd = pair.SecondToFirst.Mirrored,
            SpanMm = SpanMm(pair),
            Clearance = pair.Clearance.ToWire(),
        };

    /// <summary>The second blade as an item of a library is answered, to the contract.</summary>
    /// <param name="pair">Both blades.</param>
    /// <param name="report">What the dial shows over the second.</param>
    /// <param name="outlines">The second as drawn; null when not asked for.</param>
    public static Wire.CheckedSecondBlade ToChecked(
        this DrawnPair pair,
        Wire.CheckReport report,
        Wire.KnifeOutlines? outlines
    ) =>
        new()
        {
            Report = report,
            Outlines = outlines,
            Arrangement =
                pair.Parameters.Arrangement == Arrangement.SharedSpring
                    ? Wire.Arrangement.SharedSpring
                    : Wire.Arrangement.TwoSprings,
            AtOtherEnd = pair.SecondToFirst.Mirrored,
            SpanMm = SpanMm(pair),
            Clearance = pair.Clearance.ToWire(),
        };

    private static double SpanMm(DrawnPair pair) => Math.Abs(pair.SecondToFirst.Shift.X);

    private static Wire.BladeClearance ToWire(this PairClearance clearance) =>
        new()
        {
            SidewaysMm = clearance.SidewaysMm,
            LeastMm = clearance.LeastMm,
            Layered = clearance.AreLayered,
            Passings = { clearance.Cases.Select(ToWire) },
        };

    private static Wire.BladePassing ToWire(ClearanceCase passing)
    {
        (Wire.BladeMotion first, Wire.BladeMotion second) = passing.Kind switch
        {
            ClearanceKind.BothClosed => (Wire.BladeMotion.Closed, Wire.BladeMotion.Closed),
            ClearanceKind.FirstTurnsSecondClosed => (Wire.BladeMotion.Turns, Wire.BladeMotion.Closed),
            ClearanceKind.FirstTurnsSecondOpen => (Wire.BladeMotion.Turns, Wire.BladeMotion.Open),
            ClearanceKind.SecondTurnsFirstClosed => (Wire.BladeMotion.Closed, Wire.BladeMotion.Turns),
            _ => (Wire.BladeMotion.Open, Wire.BladeMotion.Turns),
        };
        return new Wire.BladePassing
        {
            First = first,
            Second = second,
            DistanceMm = passing.DistanceMm,
            Overlap = passing.Overlaps,
            FirstAngleDeg = passing.FirstAngle.Degrees,
            SecondAngleDeg = passing.SecondAngle.Degrees,
            At = passing.At.ToWire(),
        };
    }

    /// <summary>The second blade from the contract.</summary>
    public static SecondBladeParameters ToSecond(Wire.SecondBlade wire)
    {
        PatternParameters page = PageOf(wire).ToParameters();
        SecondBladeParameters usual = new();
        return new SecondBladeParameters
        {
            AtOtherEnd = wire is not { HasAtOtherEnd: true, AtOtherEnd: false },
            Tang = page.Tang,
            Blade = page.Blade,
            Readings = page.Readings,
            FrontMm = wire.HasFrontMm ? wire.FrontMm : null,
            FirstThicknessMm = wire.HasFirstThicknessMm ? wire.FirstThicknessMm : usual.FirstThicknessMm,
            ThicknessMm = wire.HasThicknessMm ? wire.ThicknessMm : usual.ThicknessMm,
            LinerBetweenMm = wire.HasLinerBetweenMm ? wire.LinerBetweenMm : usual.LinerBetweenMm,
            LeastClearanceMm = wire.HasLeastClearanceMm ? wire.LeastClearanceMm : usual.LeastClearanceMm,
        };
    }
}
