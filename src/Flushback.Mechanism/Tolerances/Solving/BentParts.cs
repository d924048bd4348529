using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Tolerances.Drawing;

namespace Flushback.Mechanism.Tolerances.Solving;

/// <summary>Pull and peak stress of a part, its spring really bent.</summary>
/// <remarks>
/// What a spring is bent to is not a part's preload but its free shape and its pins: they set the turn at which it lies
/// unbent, whatever the tang does. A centre pin higher by d, or a rear pin lower by d, turns that line up by d over the span.
/// </remarks>
internal sealed class BentParts
{
    // Small against any dimension, large against the rounding of a sweep; as the check in the handle takes it.
    private const double StepMm = 0.01;

    // Figures are read at every degree; both sides of a difference at the same ones.
    private static readonly Angle _step = Angle.FromDegrees(1);

    private readonly PartDrawing _drawing;
    private readonly HandleModel _asDrawn;
    private readonly HandleSettings _settings;

    private BentParts(PartDrawing drawing, HandleModel asDrawn, CancellationToken cancellation)
    {
        (_drawing, _asDrawn) = (drawing, asDrawn);
        _settings = asDrawn.Settings with
        {
            PreloadKind = PreloadKind.Sink,
            NailNickMm = asDrawn.NailNickMm,
            StiffNoseMm = -asDrawn.Beam.StiffFromXMm,
        };
        AsDrawn = Figures.Of(new HandleSweep(asDrawn, _step, cancellation));
        Derivatives = DerivativesOf(cancellation);
    }

    /// <summary>The knife as drawn.</summary>
    public Figures AsDrawn { get; }

    /// <summary>Derivatives of pull and stress, by central differences.</summary>
    public ImmutableArray<Derivatives> Derivatives { get; }

    /// <summary>A knife to be bent, or why it can not be.</summary>
    public static (BentParts? Parts, ImmutableArray<KnifeProblem> Problems) Of(
        Placement placement,
        PartDrawing drawing,
        HandleSettings settings,
        CancellationToken cancellation
    )
    {
        (HandleModel? model, ImmutableArray<KnifeProblem> problems) = HandleCheck.Build(
            placement,
            settings,
            cancellation
        );
        if (model is null)
        {
            return (null, problems);
        }

        HandleSweep? sweep = model.CanTurn ? new HandleSweep(model, _step, cancellation) : null;
        return HandleProblems.Stuck(model, sweep) is { } stuck
            ? (null, [stuck])
            : (new BentParts(drawing, model, cancellation), []);
    }

    /// <summary>What a part shows that goes together on the bench; null when its blade can not be turned.</summary>
    public Figures? Read(ReadOnlySpan<double> deviationsMm, CancellationToken cancellation)
    {
        if (_drawing.Draw(deviationsMm) is not { } part)
        {
            return null;
        }

        BenchGround ground = new(part.Knife, cancellation);
        HandleSettings settings = _settings with
        {
            WidthMm = _settings.WidthMm + part.Motion.WidthMm,
            PreloadMm = SinkMm(ground, part.Motion),
        };
        return
            settings.WidthMm > 0
            && Model(ground, settings, part.Motion.DepthMm, cancellation) is { CanTurn: true } model
            ? Figures.Of(new HandleSweep(model, _step, cancellation))
            : null;
    }

    /// <summary>The part in its handle; null when no spring runs from pin to pin to nose.</summary>
    private static HandleModel? Model(
        BenchGround ground,
        HandleSettings settings,
        double addedDepthMm,
        CancellationToken cancellation
    )
    {
        try
        {
            return new HandleModel(ground, settings, addedDepthMm, cancellation);
        }
        catch (ArgumentException)
        {
            // What the beam says of pins so far off that they lie beside the spring or behind one another.
            return null;
        }
    }

    /// <summary>How far the part's nose sinks over the pivot when its blade is taken out.</summary>
    private double SinkMm(BenchGround part, PartMotion motion)
    {
        Angle open = _asDrawn.Ground.Open.Lowest;
        double sine = (_asDrawn.PreloadMm + motion.PreloadMm) / _asDrawn.PivotArmMm;
        double raised = motion.WholeSpringShift.Y - motion.DropMm - motion.RearShift.Y;
        Angle free = open - new Angle(Math.Asin(Math.Clamp(sine, -1, 1))) + new Angle(raised / _asDrawn.Beam.SpanMm);
        return -part.Knife.CentrePin.Centre.X * Math.Sin((part.Open.Lowest - free).Radians);
    }

    private ImmutableArray<Derivatives> DerivativesOf(CancellationToken cancellation)
    {
        int count = _drawing.Motions.Length;
        double[] pull = new double[count];
        double[] stress = new double[count];
        double[] deviations = new double[count];
        for (int i = 0; i < count; i++)
        {
            deviations[i] = -StepMm;
            Figures? less = Read(deviations, cancellation);
            deviations[i] = StepMm;
            Figures? more = Read(deviations, cancellation);
            deviations[i] = 0;

            // Where one side can not be turned the other still has a slope.
            double apart = less is null || more is null ? StepMm : 2 * StepMm;
            (Figures from, Figures to) = (less ?? AsDrawn, more ?? AsDrawn);
            pull[i] = (to.PullN - from.PullN) / apart;
            stress[i] = (to.StressMpa - from.StressMpa) / apart;
        }

        return
        [
            new Derivatives(Outcome.Pull, AsDrawn.PullN, [.. pull], IsExact: false),
            new Derivatives(Outcome.PeakStress, AsDrawn.StressMpa, [.. stress], IsExact: false),
        ];
    }
}

/// <summary>What the hand feels and the steel bears.</summary>
/// <param name="PullN">Greatest pull at the nail nick.</param>
/// <param name="StressMpa">Greatest bending stress.</param>
internal readonly record struct Figures(double PullN, double StressMpa)
{
    /// <summary>The figures of a sweep.</summary>
    public static Figures Of(HandleSweep sweep) => new(sweep.Pull.PullN, sweep.PeakStressMpa);
}
