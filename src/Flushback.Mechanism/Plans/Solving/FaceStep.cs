namespace Flushback.Mechanism.Plans.Solving;

/// <summary>The depths that take least metal, with the reading where it is wanted and the rest angle in its window.</summary>
/// <remarks>
/// The depths with the wanted reading lie on a line: all of it from the rear of the face at 0, all from the front at 1.
/// Along it the area is least where its slope vanishes, or at an end.
/// </remarks>
internal sealed class FaceStep
{
    // Weights below this share of their partner count as none.
    private const double Little = 1e-4;

    private const double LittleTurn = 1e-9;
    private const int MostSecants = 30;
    private const double WayEnough = 1e-7;

    // A gap that is about to close is closed by this and no more, so that the next trial has the new contact carry.
    private const double OverMm = 3e-6;

    // An end is tried when it saves as much; the way there is looked at in so many stretches.
    private const double WorthMm2 = 1e-5;
    private const int Stretches = 8;

    private readonly FaceModel _model;
    private readonly double _fallMm;

    private FaceStep(FaceModel model, double fallMm) => (_model, _fallMm) = (model, fallMm);

    /// <summary>The depths, and what holds their tilt.</summary>
    /// <param name="model">The stop about the last trial.</param>
    /// <param name="liftMm">The reading wanted, with what the open flat gives taken off.</param>
    /// <param name="bracket">Tilts between which the least metal is known to lie.</param>
    public static (FaceDepths Depths, TiltHeld Held) Least(FaceModel model, double liftMm, TiltBracket bracket)
    {
        double fall = model.UncutLiftMm - liftMm;
        double steepest = Math.Max(-model.Lift.Front, -model.Lift.Rear);
        if (-model.Lift.Front < Little * steepest)
        {
            return (new FaceDepths(0, fall / -model.Lift.Rear), TiltHeld.ByFrontDepth);
        }

        if (-model.Lift.Rear < Little * steepest)
        {
            return (new FaceDepths(fall / -model.Lift.Front, 0), TiltHeld.ByRearDepth);
        }

        return new FaceStep(model, fall).Least(bracket);
    }

    /// <summary>The end of the tilts at which less metal would go than at the trial, by the model; null when there is none.</summary>
    /// <remarks>Steps go downhill and end in the nearest hollow; beyond a rise there may be a deeper one.</remarks>
    public static TiltHeld? CheaperEnd(FaceModel model, double liftMm)
    {
        double steepest = Math.Max(-model.Lift.Front, -model.Lift.Rear);
        return Math.Min(-model.Lift.Front, -model.Lift.Rear) < Little * steepest
            ? null
            : new FaceStep(model, model.UncutLiftMm - liftMm).CheaperEnd();
    }

    private TiltHeld? CheaperEnd()
    {
        (double low, TiltHeld lowHeld, double high, TiltHeld highHeld) = Range();
        double now = Math.Clamp(WayOf(_model.At), low, high);
        Func<double, double> slope = Slope();
        double More(double end)
        {
            double step = (end - now) / Stretches;
            return _fallMm * step * Enumerable.Range(0, Stretches).Sum(i => slope(now + ((i + 0.5) * step)));
        }

        (double atLow, double atHigh) = (More(low), More(high));
        return Math.Min(atLow, atHigh) > -WorthMm2 ? null
            : atLow < atHigh ? lowHeld
            : highHeld;
    }

    /// <summary>Area more on the way from rear to front, for each millimetre of fall.</summary>
    private Func<double, double> Slope()
    {
        Func<FaceDepths, PerDepth> area = _model.AreaElsewhere();
        return way =>
        {
            PerDepth gradient = area(Depths(way));
            return (gradient.Front / -_model.Lift.Front) - (gradient.Rear / -_model.Lift.Rear);
        };
    }

    private (FaceDepths Depths, TiltHeld Held) Least(TiltBracket bracket)
    {
        (double low, TiltHeld lowHeld, double high, TiltHeld highHeld) = Range();
        if (bracket.HeldBy is { } end && (end == lowHeld || end == highHeld))
        {
            return (Snapped(Depths(end == lowHeld ? low : high)), end);
        }

        double now = Math.Clamp(WayOf(_model.At), low, high);
        Func<double, double> slope = Slope();
        double slopeNow = slope(now);
        bracket.Note(Tilt(_model.At), slopeNow);
        (double downhill, TiltHeld downhillHeld) = slopeNow < 0 ? (high, highHeld) : (low, lowHeld);
        double slopeThere = downhill == now ? slopeNow : slope(downhill);
        (double way, TiltHeld held) =
            Math.Sign(slopeThere) == Math.Sign(slopeNow)
                ? (downhill, downhillHeld)
                : (Root(slope, now, slopeNow, downhill, slopeThere), TiltHeld.ByNothing);
        double capped = Capped(now, way);
        double tilt = bracket.Within(Tilt(Depths(capped)));
        double within = Math.Clamp(WayOfTilt(tilt), low, high);
        bool isCapped = bracket.IsHeld || Math.Abs(within - way) > WayEnough;
        return (Snapped(Depths(within)), isCapped ? TiltHeld.ByContacts : held);
    }

    /// <summary>Where a slope vanishes between two ways with slopes of different signs, by false position (Illinois).</summary>
    private static double Root(Func<double, double> slope, double a, double slopeA, double b, double slopeB)
    {
        double middle = a;
        for (int i = 0; i < MostSecants && Math.Abs(b - a) > WayEnough; i++)
        {
            middle = b - (slopeB * (b - a) / (slopeB - slopeA));
            double slopeMiddle = slope(middle);
            if (Math.Abs(slopeMiddle) < 1e-12)
            {
                break;
            }

            if (Math.Sign(slopeMiddle) != Math.Sign(slopeB))
            {
                (a, slopeA) = (b, slopeB);
            }
            else
            {
                slopeA /= 2;
            }

            (b, slopeB) = (middle, slopeMiddle);
        }

        return middle;
    }

    private FaceDepths Depths(double way) =>
        new(way * _fallMm / -_model.Lift.Front, (1 - way) * _fallMm / -_model.Lift.Rear);

    private double WayOf(FaceDepths depths)
    {
        double all = _model.Lift.Of(depths);
        return all < 0 ? _model.Lift.Front * depths.FrontMm / all : 0.5;
    }

    private static double Tilt(FaceDepths depths) => depths.FrontMm - depths.RearMm;

    private double WayOfTilt(double tilt)
    {
        double rearmost = Tilt(Depths(0));
        return (tilt - rearmost) / (Tilt(Depths(1)) - rearmost);
    }

    /// <summary>As far as no gap closes on the way there, and just beyond.</summary>
    private double Capped(double from, double to)
    {
        FaceDepths step = Depths(to);
        foreach ((double gap, PerDepth change) in _model.Gaps)
        {
            double atFrom = gap + change.Of(Depths(from)) - change.Of(_model.At);
            double atTo = gap + change.Of(step) - change.Of(_model.At);
            if (atFrom > OverMm && atTo < -OverMm)
            {
                to = from + ((to - from) * ((atFrom + OverMm) / (atFrom - atTo)));
                step = Depths(to);
            }
        }

        return to;
    }

    /// <summary>A depth too small to be a pass is none; the other one makes up for it.</summary>
    private FaceDepths Snapped(FaceDepths depths) =>
        depths.FrontMm < PlanTrial.NothingMm ? Depths(0)
        : depths.RearMm < PlanTrial.NothingMm ? Depths(1)
        : depths;

    /// <summary>The ways on which depths are not negative and the rest angle is in its window; the angle is linear on them.</summary>
    private (double Low, TiltHeld LowHeld, double High, TiltHeld HighHeld) Range()
    {
        (double low, TiltHeld lowHeld, double high, TiltHeld highHeld) = (
            0,
            TiltHeld.ByFrontDepth,
            1,
            TiltHeld.ByRearDepth
        );
        double start = _model.AngleAt(Depths(0));
        double turn = _model.AngleAt(Depths(1)) - start;
        if (Math.Abs(turn) < LittleTurn)
        {
            return (low, lowHeld, high, highHeld);
        }

        double least = (_model.Window.Least.Radians - start) / turn;
        double most = (_model.Window.Most.Radians - start) / turn;
        (double from, TiltHeld fromHeld, double to, TiltHeld toHeld) =
            turn > 0
                ? (least, TiltHeld.ByLeastAngle, most, TiltHeld.ByMostAngle)
                : (most, TiltHeld.ByMostAngle, least, TiltHeld.ByLeastAngle);
        if (from > low)
        {
            (low, lowHeld) = (Math.Min(from, 1), fromHeld);
        }

        if (to < high)
        {
            (high, highHeld) = (Math.Max(to, 0), toHeld);
        }

        // An empty range by rounding is one point.
        return (low, lowHeld, Math.Max(low, high), highHeld);
    }
}
