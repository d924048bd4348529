using Flushback.Geometry;
using Flushback.Mechanism.Bench;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>One stop about a trial: reading and rest angle as linear functions of the depths off its face.</summary>
internal sealed class FaceModel
{
    // Weights and turns below this share of their partner count as none.
    private const double Little = 1e-4;
    private const int Halvings = 45;

    private readonly FaceCut _face;
    private readonly FaceDepths _at;
    private readonly AngleWindow _window;
    private readonly CutLine? _beside;

    // What the metal of the other face pays for this one: its area per reading, and its reading per depth here.
    private readonly double _otherPrice;
    private readonly (double PerFront, double PerRear) _other;

    private FaceModel(
        FaceCut face,
        FaceDepths at,
        AngleWindow window,
        CutLine? beside,
        double otherPrice,
        (double PerFront, double PerRear) other
    ) => (_face, _at, _window, _beside, _otherPrice, _other) = (face, at, window, beside, otherPrice, other);

    /// <summary>Reading at the trial.</summary>
    public required double LiftMm { get; init; }

    /// <summary>Rest angle at the trial.</summary>
    public required Angle RestAngle { get; init; }

    /// <summary>Change of the reading per front depth; never above zero.</summary>
    public required double LiftPerFront { get; init; }

    /// <summary>Change of the reading per rear depth; never above zero.</summary>
    public required double LiftPerRear { get; init; }

    /// <summary>Change of the rest angle in radians per front depth.</summary>
    public required double AnglePerFront { get; init; }

    /// <summary>Change of the rest angle in radians per rear depth.</summary>
    public required double AnglePerRear { get; init; }

    /// <summary>The model of a stop about a trial; null where no face or no contact serves it.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="reading">The stop's reading in it.</param>
    /// <param name="amounts">What it took.</param>
    /// <param name="window">Where the stop may rest.</param>
    /// <param name="otherPrice">Area that the other stop's face pays for each millimetre its reading rises.</param>
    public static FaceModel? Of(
        PlanTrial trial,
        StopReading reading,
        PlanAmounts amounts,
        AngleWindow window,
        double otherPrice
    )
    {
        Stop stop = reading.Stop;
        if (trial.FaceOf(stop) is not { } face)
        {
            return null;
        }

        OutlineMotion motion = new(trial, amounts);
        if (Changes(trial, motion, reading, stop) is not { } own)
        {
            return null;
        }

        // The dial is zeroed at open: what the cut does there counts for every stop.
        StopReading open = trial.Readings.Stops[0];
        var zero = Changes(trial, motion, open, stop) ?? default;
        Stop otherStop = stop == Stop.Closed ? Stop.HalfStop : Stop.Closed;
        var other = trial.Readings.At(otherStop) is { } there
            ? Changes(trial, motion, there, stop) ?? default
            : default;
        FaceDepths depths = amounts.At(stop);
        FaceDepths beside = amounts.At(otherStop);
        CutLine? later = stop == Stop.Closed && !beside.IsNothing ? trial.HalfStopFace?.Line(beside) : null;
        return new FaceModel(
            face,
            depths,
            window,
            later,
            otherPrice,
            (other.Front.LiftMm - zero.Front.LiftMm, other.Rear.LiftMm - zero.Rear.LiftMm)
        )
        {
            LiftMm = reading.LiftMm,
            RestAngle = reading.RestAngle,
            LiftPerFront = Math.Min(0, own.Front.LiftMm - zero.Front.LiftMm),
            LiftPerRear = Math.Min(0, own.Rear.LiftMm - zero.Rear.LiftMm),
            AnglePerFront = own.Front.AngleRad,
            AnglePerRear = own.Rear.AngleRad,
        };
    }

    /// <summary>Reading with nothing off the face.</summary>
    public double UncutLiftMm => LiftMm - (LiftPerFront * _at.FrontMm) - (LiftPerRear * _at.RearMm);

    /// <summary>Rest angle with nothing off the face, in radians.</summary>
    public double UncutAngleRad => AngleAt(new FaceDepths(0, 0));

    /// <summary>The highest reading with the rest angle in its window, and the depths that turn the blade there.</summary>
    /// <returns>Null when no depths bring the angle into the window.</returns>
    public (double LiftMm, FaceDepths Depths)? Highest()
    {
        double angle = UncutAngleRad;
        double turn =
            angle < _window.Least.Radians ? _window.Least.Radians - angle
            : angle > _window.Most.Radians ? _window.Most.Radians - angle
            : 0;
        if (turn == 0)
        {
            return (UncutLiftMm, default);
        }

        double front = turn / AnglePerFront;
        double rear = turn / AnglePerRear;
        FaceDepths[] ways =
        [
            .. new[] { new FaceDepths(front, 0), new FaceDepths(0, rear) }.Where(way =>
                double.IsFinite(way.FrontMm) && double.IsFinite(way.RearMm) && way is { FrontMm: >= 0, RearMm: >= 0 }
            ),
        ];
        return ways.Length == 0 ? null : ways.Select(way => (LiftAt(way), way)).MaxBy(way => way.Item1);
    }

    /// <summary>The depths that take least metal, with the reading where it is wanted and the rest angle in its window.</summary>
    /// <param name="liftMm">The reading wanted, with what the open flat gives taken off.</param>
    /// <param name="mostTilt">How far the tilt may change from the trial's: 1 from one end of the face to the other.</param>
    public (FaceDepths Depths, TiltHeld Held) Least(double liftMm, double mostTilt)
    {
        double fall = UncutLiftMm - liftMm;
        double steepest = Math.Max(-LiftPerFront, -LiftPerRear);
        if (-LiftPerFront < Little * steepest)
        {
            return (new FaceDepths(0, fall / -LiftPerRear), TiltHeld.ByFrontDepth);
        }

        if (-LiftPerRear < Little * steepest)
        {
            return (new FaceDepths(fall / -LiftPerFront, 0), TiltHeld.ByRearDepth);
        }

        // The depths with the wanted reading: all of it from the rear at 0, all from the front at 1.
        FaceDepths At(double way) => new(way * fall / -LiftPerFront, (1 - way) * fall / -LiftPerRear);
        (double low, TiltHeld lowHeld, double high, TiltHeld highHeld) = Range(At);
        double now = LiftPerFront * _at.FrontMm / ((LiftPerFront * _at.FrontMm) + (LiftPerRear * _at.RearMm));
        if (low < now - mostTilt && now - mostTilt <= high)
        {
            (low, lowHeld) = (now - mostTilt, TiltHeld.ByContacts);
        }

        if (high > now + mostTilt && now + mostTilt >= low)
        {
            (high, highHeld) = (now + mostTilt, TiltHeld.ByContacts);
        }

        double Slope(double way)
        {
            (double front, double rear) = MetalGradient(At(way));
            return (front / -LiftPerFront) - (rear / -LiftPerRear);
        }

        if (Slope(low) >= 0 || low >= high)
        {
            return (At(low), lowHeld);
        }

        if (Slope(high) <= 0)
        {
            return (At(high), highHeld);
        }

        for (int i = 0; i < Halvings; i++)
        {
            double middle = (low + high) / 2;
            (low, high) = Slope(middle) < 0 ? (middle, high) : (low, middle);
        }

        return (At((low + high) / 2), TiltHeld.ByNothing);
    }

    /// <summary>The balance of metal against reading and what holds the tilt, at the trial's own depths.</summary>
    public FaceOptimum Balance(Stop stop, TiltHeld held)
    {
        (double areaFront, double areaRear) = MetalGradient(_at);

        // Least area with reading <= wanted and what is held >= its bound: area' + reading * lift' - held * bound' = 0.
        (double boundFront, double boundRear) = held switch
        {
            TiltHeld.ByFrontDepth => (1.0, 0.0),
            TiltHeld.ByRearDepth => (0.0, 1.0),
            TiltHeld.ByLeastAngle => (AnglePerFront, AnglePerRear),
            TiltHeld.ByMostAngle => (-AnglePerFront, -AnglePerRear),
            _ => (0.0, 0.0),
        };
        double determinant = (LiftPerRear * boundFront) - (LiftPerFront * boundRear);
        double reading = IsFree(held)
            ? -((areaFront * LiftPerFront) + (areaRear * LiftPerRear))
                / ((LiftPerFront * LiftPerFront) + (LiftPerRear * LiftPerRear))
            : ((areaFront * boundRear) - (areaRear * boundFront)) / determinant;
        double multiplier = IsFree(held) ? 0 : ((areaFront * LiftPerRear) - (areaRear * LiftPerFront)) / determinant;
        double residual = Math.Max(
            Math.Abs(areaFront + (reading * LiftPerFront) - (multiplier * boundFront)),
            Math.Abs(areaRear + (reading * LiftPerRear) - (multiplier * boundRear))
        );
        return new FaceOptimum(stop, _at.FrontMm, _at.RearMm, held, reading, multiplier, residual);
    }

    /// <summary>The balance at a face that is only turned: its reading has room, one depth is nothing.</summary>
    public FaceOptimum AngleBalance(Stop stop)
    {
        (double areaFront, double areaRear) = MetalGradient(_at);
        bool turnsByFront = _at.FrontMm > 0;
        double anglePerDepth = turnsByFront ? AnglePerFront : AnglePerRear;
        double multiplier = (turnsByFront ? areaFront : areaRear) / Math.Abs(anglePerDepth);
        return new FaceOptimum(
            stop,
            _at.FrontMm,
            _at.RearMm,
            anglePerDepth > 0 ? TiltHeld.ByLeastAngle : TiltHeld.ByMostAngle,
            ReadingMultiplier: 0,
            multiplier,
            ResidualMm2PerMm: 0
        );
    }

    private static ((double LiftMm, double AngleRad) Front, (double LiftMm, double AngleRad) Rear)? Changes(
        PlanTrial trial,
        OutlineMotion motion,
        StopReading reading,
        Stop cut
    )
    {
        if (RestGradient.Of(trial.Knife, reading) is not { } gradient)
        {
            return null;
        }

        RigidMotion toBlade = Knives.Knife.BladeAt(-reading.RestAngle);
        (double PerFront, double PerRear) Opened(Point at, Vector normal) =>
            motion.Opened(cut, toBlade.Apply(at), toBlade.Apply(normal), reading.Stop == cut);
        return (
            gradient.Change((at, normal, _) => Opened(at, normal).PerFront),
            gradient.Change((at, normal, _) => Opened(at, normal).PerRear)
        );
    }

    /// <summary>Area more for each millimetre more, here and at the other face, which has to make good what this does to it.</summary>
    private (double PerFront, double PerRear) MetalGradient(FaceDepths depths)
    {
        (double front, double rear) = _face.AreaGradient(depths, _beside);
        return (front + (_otherPrice * _other.PerFront), rear + (_otherPrice * _other.PerRear));
    }

    private static bool IsFree(TiltHeld held) => held is TiltHeld.ByNothing or TiltHeld.ByContacts;

    private double LiftAt(FaceDepths depths) =>
        UncutLiftMm + (LiftPerFront * depths.FrontMm) + (LiftPerRear * depths.RearMm);

    private double AngleAt(FaceDepths depths) =>
        RestAngle.Radians
        + (AnglePerFront * (depths.FrontMm - _at.FrontMm))
        + (AnglePerRear * (depths.RearMm - _at.RearMm));

    /// <summary>The ways on which depths are not negative and the rest angle is in its window; the angle is linear on them.</summary>
    private (double Low, TiltHeld LowHeld, double High, TiltHeld HighHeld) Range(Func<double, FaceDepths> at)
    {
        (double low, TiltHeld lowHeld, double high, TiltHeld highHeld) = (
            0,
            TiltHeld.ByFrontDepth,
            1,
            TiltHeld.ByRearDepth
        );
        double start = AngleAt(at(0));
        double turn = AngleAt(at(1)) - start;
        if (Math.Abs(turn) < 1e-9)
        {
            return (low, lowHeld, high, highHeld);
        }

        double least = (_window.Least.Radians - start) / turn;
        double most = (_window.Most.Radians - start) / turn;
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
