using Flushback.Geometry;
using Flushback.Mechanism.Bench.Solving;
using Flushback.Mechanism.Handle.Beams;
using Flushback.Mechanism.Handle.Solving;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Handle;

/// <summary>A knife on the bench, as far as the handle asks for it.</summary>
internal sealed class BenchGround
{
    public BenchGround(Knife knife, CancellationToken cancellation)
    {
        Knife = knife;
        Solver = new BenchSolver(knife, cancellation);
        Track = RotationTrack.Follow(Solver, cancellation);
        StopFinder stops = new(Solver, Track);
        Open = stops.Open().Pose;
        Closed = stops.Near(Angle.FromDegrees(180), 0).Pose;
        RearmostContactX = Track
            .Poses.Where(pose =>
                pose.IsPossible && pose.BladeAngle >= Open.BladeAngle && pose.BladeAngle <= Closed.BladeAngle
            )
            .Append(Open)
            .Append(Closed)
            .Min(pose => knife.SpringAt(pose.Lowest).Inverse.Apply(pose.Support.At).X);
    }

    public Knife Knife { get; }

    public BenchSolver Solver { get; }

    public RotationTrack Track { get; }

    public SpringPose Open { get; }

    public SpringPose Closed { get; }

    /// <summary>Rearmost place of the spring that the tang bears on, spring as drawn.</summary>
    public double RearmostContactX { get; }
}

/// <summary>A knife with its elastic spring, followed through the rotation.</summary>
internal sealed class HandleModel
{
    /// <summary>Builds and follows.</summary>
    /// <param name="ground">The knife on the bench.</param>
    /// <param name="settings">Spring and steel.</param>
    /// <param name="addedDepthMm">Depth added at the spring's back.</param>
    /// <param name="cancellation">Looked at once a blade angle.</param>
    public HandleModel(
        BenchGround ground,
        HandleSettings settings,
        double addedDepthMm = 0,
        CancellationToken cancellation = default
    )
    {
        Ground = ground;
        Settings = settings;
        Knife knife = ground.Knife;
        double stiffFrom = settings.StiffNoseMm is { } behind ? -behind : ground.RearmostContactX;
        Beam = new SpringBeam(knife.Spring, knife.CentrePin, knife.RearPin!.Value, stiffFrom, addedDepthMm);
        Stiffness = Beam.Whole.ToStiffness(settings.SpringSteel.ModulusUsedMpa, settings.WidthMm);
        Solver = new NoseSolver(ground.Solver, new ElasticNose(Stiffness, Beam.OverhangMm, FreeTurn()));
        Track = NoseTrack.Follow(Solver, ground.Track.At(RotationTrack.MidSwing).Lowest, cancellation);
        Rests = new HandleRestFinder(Solver, Track);
        Stress = new StressLine(Beam, settings.WidthMm);
    }

    public BenchGround Ground { get; }

    public HandleSettings Settings { get; }

    public SpringBeam Beam { get; }

    public NoseStiffness Stiffness { get; }

    public NoseSolver Solver { get; }

    public NoseTrack Track { get; }

    public HandleRestFinder Rests { get; }

    public StressLine Stress { get; }

    /// <summary>False when the blade cannot be brought to mid-swing.</summary>
    public bool CanTurn => Track.States.Count > 1;

    /// <summary>From the centre pin forward to the pivot.</summary>
    public double PivotArmMm => -Ground.Knife.CentrePin.Centre.X;

    /// <summary>How far the nose would sink over the pivot.</summary>
    public double PreloadMm => PivotArmMm * Math.Sin((Ground.Open.Lowest - Solver.Nose.FreeTurn).Radians);

    /// <summary>Height of the dial point over where it is drawn.</summary>
    public double DialRiseMm(NosePose pose) => pose.RiseOf(Ground.Knife.DialPoint, Ground.Knife.CentrePin.Centre);

    /// <summary>Distance of the nail nick from the pivot.</summary>
    public double NailNickMm => Settings.NailNickMm ?? (0.6 * TipDistance());

    /// <summary>Force over the pivot for a millimetre of lift there.</summary>
    public double StiffnessNPerMm
    {
        get
        {
            NoseFlexibility f = Beam.Whole;
            double ahead = PivotArmMm - Beam.OverhangMm;
            double give = f.RisePerForce + (2 * ahead * f.TiltPerForce) + (ahead * ahead * f.TiltPerMoment);
            return Settings.SpringSteel.ModulusUsedMpa * Settings.WidthMm / give;
        }
    }

    private double TipDistance() => Ground.Knife.Blade.Edges.Max(edge => (edge.Start - Point.Origin).Length);

    private Angle FreeTurn() =>
        Settings.PreloadKind switch
        {
            // The pins hold a straight spring in a straight line: raised behind the centre pin it sinks in front of it.
            PreloadKind.RearPinShift => Ground.Open.Lowest
                - new Angle(Math.Asin(Math.Clamp(Settings.PreloadMm / Beam.SpanMm, -1, 1))),
            PreloadKind.DrawnFree => Angle.Zero,
            _ => Ground.Open.Lowest - new Angle(Math.Asin(Math.Clamp(Settings.PreloadMm / PivotArmMm, -1, 1))),
        };
}
