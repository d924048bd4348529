using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>One stop about a trial: reading, rest angle, gaps and area as functions of the depths off its face.</summary>
internal sealed class FaceModel
{
    private readonly FaceCut _face;
    private readonly CutLine? _beside;

    // What the metal of the other face pays for this one: its area per reading times its reading per depth here.
    private readonly PerDepth _paidBeside;

    private FaceModel(FaceCut face, CutLine? beside, PerDepth paidBeside) =>
        (_face, _beside, _paidBeside) = (face, beside, paidBeside);

    /// <summary>Depths of the trial.</summary>
    public required FaceDepths At { get; init; }

    /// <summary>Where the stop may rest.</summary>
    public required AngleWindow Window { get; init; }

    /// <summary>Reading at the trial.</summary>
    public required double LiftMm { get; init; }

    /// <summary>Rest angle at the trial.</summary>
    public required Angle RestAngle { get; init; }

    /// <summary>Change of the reading; never above zero.</summary>
    public required PerDepth Lift { get; init; }

    /// <summary>Change of the rest angle in radians.</summary>
    public required PerDepth Turn { get; init; }

    /// <summary>Area more, here and at the other face, which has to make good what this does to it; exact at the trial.</summary>
    public required PerDepth Area { get; init; }

    /// <summary>Gaps at all stops that are open, and how each changes.</summary>
    public required ImmutableArray<(double GapMm, PerDepth Change)> Gaps { get; init; }

    /// <summary>The model of a stop about a trial; null where no face or no contact serves it.</summary>
    /// <param name="trial">The trial.</param>
    /// <param name="reading">The stop's reading in it.</param>
    /// <param name="at">What it took off the face.</param>
    /// <param name="window">Where the stop may rest.</param>
    /// <param name="otherPrice">Area that the other stop's face pays for each millimetre its reading rises.</param>
    public static FaceModel? Of(
        PlanTrial trial,
        StopReading reading,
        FaceDepths at,
        AngleWindow window,
        double otherPrice
    )
    {
        Stop stop = reading.Stop;
        if (
            trial.FaceOf(stop) is not { } face
            || OutlineMotion.Of(trial, stop) is not { } motion
            || StopMotion.Of(trial, motion, reading, isServed: true) is not { } own
        )
        {
            return null;
        }

        // The dial is zeroed at open: what the cut does there counts for every stop.
        StopMotion Elsewhere(StopReading? other) =>
            (other is null ? null : StopMotion.Of(trial, motion, other, isServed: false)) ?? StopMotion.None;
        StopMotion zero = Elsewhere(trial.Readings.Stops[0]);
        Stop otherStop = stop == Stop.Closed ? Stop.HalfStop : Stop.Closed;
        StopMotion other = Elsewhere(trial.Readings.At(otherStop));
        PerDepth paidBeside = (other.Lift - zero.Lift) * otherPrice;
        PerDepth lift = own.Lift - zero.Lift;
        CutLine? later = stop == Stop.Closed ? trial.LineOf(otherStop) : null;
        return new FaceModel(face, later, paidBeside)
        {
            At = at,
            Window = window,
            LiftMm = reading.LiftMm,
            RestAngle = reading.RestAngle,
            Lift = new PerDepth(Math.Min(0, lift.Front), Math.Min(0, lift.Rear)),
            Turn = own.Turn,
            Area = (trial.LineOf(stop) is null ? face.LengthGradient(default, later) : motion.Area()) + paidBeside,
            Gaps = [.. own.Gaps, .. zero.Gaps, .. other.Gaps],
        };
    }

    /// <summary>Reading with nothing off the face.</summary>
    public double UncutLiftMm => LiftMm - Lift.Of(At);

    /// <summary>Rest angle with given depths, in radians.</summary>
    public double AngleAt(FaceDepths depths) => RestAngle.Radians + Turn.Of(depths) - Turn.Of(At);

    /// <summary>The highest reading with the rest angle in its window, and the depths that turn the blade there.</summary>
    /// <returns>Null when no depths bring the angle into the window.</returns>
    public (double LiftMm, FaceDepths Depths)? Highest()
    {
        double angle = AngleAt(default);
        double turn =
            angle < Window.Least.Radians ? Window.Least.Radians - angle
            : angle > Window.Most.Radians ? Window.Most.Radians - angle
            : 0;
        if (turn == 0)
        {
            return (UncutLiftMm, default);
        }

        FaceDepths[] ways =
        [
            .. new[] { new FaceDepths(turn / Turn.Front, 0), new FaceDepths(0, turn / Turn.Rear) }.Where(way =>
                double.IsFinite(way.FrontMm) && double.IsFinite(way.RearMm) && way is { FrontMm: >= 0, RearMm: >= 0 }
            ),
        ];
        return ways.Length == 0 ? null : ways.Select(way => (UncutLiftMm + Lift.Of(way), way)).MaxBy(way => way.Item1);
    }

    /// <summary>How the area changes at other depths: by the lengths of the cut there, and right at the trial itself.</summary>
    public Func<FaceDepths, PerDepth> AreaElsewhere()
    {
        PerDepth beyondLength = Area - _face.LengthGradient(At, _beside);
        return depths => _face.LengthGradient(depths, _beside) + beyondLength;
    }
}
