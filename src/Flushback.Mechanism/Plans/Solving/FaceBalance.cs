using Flushback.Mechanism.Bench;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>The balance of metal against reading and what holds the tilt, at a trial's own depths.</summary>
internal static class FaceBalance
{
    /// <summary>At a face cut to its reading.</summary>
    public static FaceOptimum Of(Stop stop, FaceModel model, TiltHeld held)
    {
        (PerDepth area, PerDepth lift) = (model.Area, model.Lift);

        // Least area with reading <= wanted and what is held >= its bound: area' + reading * lift' - held * bound' = 0.
        PerDepth bound = held switch
        {
            TiltHeld.ByFrontDepth => new PerDepth(1, 0),
            TiltHeld.ByRearDepth => new PerDepth(0, 1),
            TiltHeld.ByLeastAngle => model.Turn,
            TiltHeld.ByMostAngle => -model.Turn,
            _ => default,
        };
        bool isFree = held is TiltHeld.ByNothing or TiltHeld.ByContacts;
        double determinant = (lift.Rear * bound.Front) - (lift.Front * bound.Rear);
        double reading = isFree
            ? -((area.Front * lift.Front) + (area.Rear * lift.Rear))
                / ((lift.Front * lift.Front) + (lift.Rear * lift.Rear))
            : ((area.Front * bound.Rear) - (area.Rear * bound.Front)) / determinant;
        double multiplier = isFree ? 0 : ((area.Front * lift.Rear) - (area.Rear * lift.Front)) / determinant;
        PerDepth left = area + (lift * reading) - (bound * multiplier);
        return new FaceOptimum(
            stop,
            model.At.FrontMm,
            model.At.RearMm,
            held,
            reading,
            multiplier,
            Math.Max(Math.Abs(left.Front), Math.Abs(left.Rear))
        );
    }

    /// <summary>At a face that is only turned: its reading has room and one of its depths is nothing.</summary>
    /// <remarks>
    /// Least area with the angle at its bound and neither depth negative: what is left of the gradient along the depth that
    /// is cut has to vanish, and along the other it may only grow.
    /// </remarks>
    public static FaceOptimum Turned(Stop stop, FaceModel model)
    {
        bool byFront = model.At.FrontMm > model.At.RearMm;
        double turn = byFront ? model.Turn.Front : model.Turn.Rear;
        double multiplier = (byFront ? model.Area.Front : model.Area.Rear) / Math.Abs(turn);
        PerDepth left = model.Area - (model.Turn * (multiplier * Math.Sign(turn)));
        (double cut, double uncut) = byFront ? (left.Front, left.Rear) : (left.Rear, left.Front);
        return new FaceOptimum(
            stop,
            model.At.FrontMm,
            model.At.RearMm,
            turn > 0 ? TiltHeld.ByLeastAngle : TiltHeld.ByMostAngle,
            ReadingMultiplier: 0,
            multiplier,
            Math.Max(Math.Abs(cut), -Math.Min(0, uncut))
        );
    }
}
