using Flushback.Mechanism.Measured;
using Flushback.Service.Drawings;
using Flushback.Service.Errors;
using static Flushback.Service.Validation.Ranges;

namespace Flushback.Service.Validation;

/// <summary>What must hold for what a plan is to reach, and for what was measured.</summary>
internal static class PlanRules
{
    // No slip joint is lifted, rounded or relieved by as much: a larger number is a slip of the unit.
    private const double LargestMm = 100;

    private const double LargestWindowDeg = 45;
    private const double HalfStopDeg = 90;
    private const double ClosedDeg = 180;

    private static readonly FieldPath _plan = new(null, "plan");
    private static readonly FieldPath _measured = new(null, "measured");

    /// <summary>Gathers what is missing or out of its range.</summary>
    public static void Check(Wire.PlanRequest request, Violations violations)
    {
        if (request.Plan is { } plan)
        {
            Check(plan, violations);
        }

        if (request.Measured is { } measured)
        {
            Check(measured, violations);
        }
    }

    /// <summary>Refuses a depth of the tip wanted of a knife without a handle, in which alone a depth counts.</summary>
    /// <exception cref="Grpc.Core.RpcException">INVALID_ARGUMENT, when that is so.</exception>
    public static void ThrowIfNoHandle(Wire.PlanRequest request, KnifeSource source)
    {
        Violations violations = new();
        if (request.Plan?.TipDepth is not null && source.Drawn.Handle is null)
        {
            violations.Add(
                $"{_plan.Of("tip_depth")}",
                "NEEDS_HANDLE",
                "A depth of the tip is wanted, but the knife has no handle; draw the handle's outline, or leave the depth out."
            );
        }

        violations.ThrowIfAny();
    }

    /// <summary>Refuses readings that cannot be, in the words of the core.</summary>
    /// <exception cref="Grpc.Core.RpcException">INVALID_ARGUMENT, when there is a problem.</exception>
    public static void ThrowIf(MeasuredProblem? problem)
    {
        Violations violations = new();
        if (problem is not null)
        {
            violations.Add($"{_measured}", problem.Reason, problem.Sentence);
        }

        violations.ThrowIfAny();
    }

    private static void Check(Wire.PlanSettings plan, Violations violations)
    {
        Ranges ranges = new(violations);
        ranges.Check(
            _plan.Of("rest_window_deg"),
            Set(plan.HasRestWindowDeg, plan.RestWindowDeg),
            LeastAboveZero,
            LargestWindowDeg
        );
        ranges.Check(
            _plan.Of("open_window_deg"),
            Set(plan.HasOpenWindowDeg, plan.OpenWindowDeg),
            LeastAboveZero,
            LargestWindowDeg
        );
        ranges.Check(
            _plan.Of("least_corner_radius_mm"),
            Set(plan.HasLeastCornerRadiusMm, plan.LeastCornerRadiusMm),
            0,
            LargestMm
        );
        ranges.Check(_plan.Of("stock_kept_mm"), Set(plan.HasStockKeptMm, plan.StockKeptMm), 0, LargestMm);
        ranges.Check(
            _plan.Of("most_off_open_flat_mm"),
            Set(plan.HasMostOffOpenFlatMm, plan.MostOffOpenFlatMm),
            0,
            LargestMm
        );
        if (plan.TipDepth is { } depth)
        {
            FieldPath path = _plan.Of("tip_depth");
            ranges.Check(path.Of("least_mm"), depth.LeastMm, -LargestMm, LargestMm);
            ranges.Check(path.Of("most_mm"), depth.MostMm, depth.LeastMm, LargestMm);
        }

        if (plan.Relief is { } relief)
        {
            FieldPath path = _plan.Of("relief");
            ranges.Check(path.Of("depth_mm"), relief.DepthMm, LeastAboveZero, LargestMm);
            ranges.Check(path.Of("margin_mm"), Set(relief.HasMarginMm, relief.MarginMm), 0, LargestMm);
        }
    }

    private static void Check(Wire.MeasuredReadings measured, Violations violations)
    {
        Ranges ranges = new(violations);
        ranges.Check(
            _measured.Of("half_stop_mm"),
            Set(measured.HasHalfStopMm, measured.HalfStopMm),
            -LargestMm,
            LargestMm
        );
        ranges.Check(_measured.Of("closed_mm"), Set(measured.HasClosedMm, measured.ClosedMm), -LargestMm, LargestMm);
        ranges.Check(
            _measured.Of("open_height_mm"),
            Set(measured.HasOpenHeightMm, measured.OpenHeightMm),
            -LargestMm,
            LargestMm
        );
        ranges.Check(
            _measured.Of("half_stop_rest_deg"),
            Set(measured.HasHalfStopRestDeg, measured.HalfStopRestDeg),
            HalfStopDeg - LargestWindowDeg,
            HalfStopDeg + LargestWindowDeg
        );
        ranges.Check(
            _measured.Of("closed_rest_deg"),
            Set(measured.HasClosedRestDeg, measured.ClosedRestDeg),
            ClosedDeg - LargestWindowDeg,
            ClosedDeg + LargestWindowDeg
        );
        ranges.Check(
            _measured.Of("most_offset_mm"),
            Set(measured.HasMostOffsetMm, measured.MostOffsetMm),
            LeastAboveZero,
            LargestMm
        );
        if (!measured.HasHalfStopMm && !measured.HasClosedMm)
        {
            violations.Add(
                $"{_measured}",
                MeasuredReasons.NothingMeasured,
                "measured holds no reading at the half stop or closed; give at least one of them, or leave it out."
            );
        }
    }
}
