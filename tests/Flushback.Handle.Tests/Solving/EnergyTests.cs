using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Handle.Beams;
using Flushback.Mechanism.Handle.Solving;

namespace Flushback.Handle.Tests.Solving;

public class EnergyTests
{
    public static TheoryData<int> Knives => [.. TenKnives.Indices];

    [Theory]
    [MemberData(nameof(Knives))]
    public void The_torque_is_the_derivative_of_the_energy(int knife)
    {
        HandleCase handle = new(TenKnives.All[knife]);
        double greatest = handle.Track.States.Where(s => s.BladeAngle.Degrees > 5).Max(s => Math.Abs(s.TorqueNmm));
        int compared = 0;
        for (double degrees = 3; degrees < 182; degrees += 0.7)
        {
            // Five points, error of fourth order; not across a place where a contact is won, lost or passed on.
            const double step = 2e-4;
            NoseState[] near =
            [
                .. new[] { -2, -1, 0, 1, 2 }.Select(k =>
                    handle.Track.At(Angle.FromDegrees(degrees) + new Angle(k * step))
                ),
            ];
            if (!near.All(s => HaveOneContactPair(s, near[0]) && s.First.Feature.At.X > handle.Beam.StiffFromXMm))
            {
                continue;
            }

            double derivative =
                ((8 * (near[3].EnergyNmm - near[1].EnergyNmm)) - (near[4].EnergyNmm - near[0].EnergyNmm)) / (12 * step);
            Assert.Equal(derivative, near[2].TorqueNmm, 1e-6 * Math.Max(Math.Abs(derivative), 0.01 * greatest));
            compared++;
        }

        Assert.InRange(compared, 200, 256);
    }

    [Theory]
    [MemberData(nameof(Knives))]
    public void The_work_from_open_to_closed_is_the_difference_of_the_energies_and_friction_takes_more_both_ways(
        int knife
    )
    {
        HandleCase handle = new(TenKnives.All[knife]);
        HandleRestFinder rests = new(handle.Solver, handle.Track);
        NoseState open = rests.Open().State;
        NoseState closed = rests.Near(Angle.FromDegrees(180)).State;
        const int steps = 20000;
        Angle step = (closed.BladeAngle - open.BladeAngle) * (1.0 / steps);
        double work = 0;
        double friction = 0;
        NoseState state = closed;
        for (int i = steps - 1; i >= 0; i--)
        {
            // Midpoint rule; the torque jumps where a contact is passed on, within one step.
            state = handle.Solver.At(open.BladeAngle + (step * (i + 0.5)), state.Pose);
            work += state.TorqueNmm * step.Radians;
            friction += state.FrictionTorqueNmm(0.15, handle.Knife.PivotRadiusMm) * step.Radians;
        }

        double gained = closed.EnergyNmm - open.EnergyNmm;
        Assert.Equal(gained, work, 0.02);

        // Closing and opening again, each takes more than the spring stores; together all of the friction's work is lost.
        double closing = work + friction;
        double opening = friction - work;
        Assert.True(closing > gained + 1);
        Assert.True(opening > 1 - gained);
        Assert.True(closing + opening > 2);
    }

    [Theory]
    [MemberData(nameof(Knives))]
    public void The_contact_forces_hold_the_nose(int knife)
    {
        HandleCase handle = new(TenKnives.All[knife]);
        foreach (
            NoseState state in handle.Track.States.Where(s => s.IsPossible && s.BladeAngle.Degrees is > -0.1 and < 182)
        )
        {
            Point pin = handle.Knife.CentrePin.Centre + new Vector(0, state.Pose.BowMm);
            double moment = new[] { state.First, state.Second }.Sum(contact =>
                (contact.Feature.At - pin).Cross(contact.Force)
            );
            double arm = handle.Beam.OverhangMm;
            double scale = Math.Max(100, state.First.ForceN + state.Second.ForceN);

            // A corner rolling on a hollow of nearly its own radius swings its normal within the 2e-9 mm of bow looked at.
            Assert.Equal(state.Load.ForceN, state.ForceN.Y, 1e-4 * scale);
            Assert.Equal(state.Load.MomentNmm + (state.Load.ForceN * arm), moment, 1e-4 * scale * (arm + 5));
        }
    }

    [Theory]
    [MemberData(nameof(Knives))]
    public void Friction_holds_the_blade_back_wherever_the_spring_presses(int knife)
    {
        HandleCase handle = new(TenKnives.All[knife]);
        Assert.All(
            handle.Track.States.Where(s => s.IsPossible && s.ContactCount > 0),
            state => Assert.True(state.FrictionTorqueNmm(0.15, handle.Knife.PivotRadiusMm) > 0)
        );
    }

    [Fact]
    public void A_spring_that_only_turns_about_its_centre_pin_lies_as_on_the_bench()
    {
        double before = double.PositiveInfinity;
        foreach (double stiffer in new[] { 1e3, 1e5, 1e7 })
        {
            // The overhang is made stiff, the span between the pins keeps giving.
            HandleCase soft = new(KnifeCatalogue.Sandpiper);
            HandleCase handle = new(
                KnifeCatalogue.Sandpiper.ToKnife(),
                change: _ => (Scaled(soft.Beam.Front, 1 / stiffer) + soft.Beam.Rear).ToStiffness(205_000, 2.4)
            );
            double most = 0;
            for (double degrees = 3; degrees < 178; degrees += 1)
            {
                Angle angle = Angle.FromDegrees(degrees);
                Angle bench = handle.BenchTrack.At(angle).Lowest;
                Point dial = handle.Knife.DialPoint;
                Point pin = handle.Knife.CentrePin.Centre;
                double off = handle.Track.At(angle).Pose.RiseOf(dial, pin) - new NosePose(bench, 0).RiseOf(dial, pin);
                most = Math.Max(most, Math.Abs(off));
            }

            Assert.InRange(most, 0, before / 50);
            before = most;
        }

        Assert.InRange(before, 0, 1e-5);
    }

    private static bool IsOnNose(HandleCase handle, NoseState state) =>
        state.IsPossible && state.First.Feature.At.X > handle.Beam.StiffFromXMm && state.GreatestForceN < 500;

    private static NoseFlexibility Scaled(NoseFlexibility f, double by) =>
        new(f.RisePerForce * by, f.TiltPerForce * by, f.TiltPerMoment * by);

    private static bool HaveOneContactPair(NoseState a, NoseState b) =>
        a.ContactCount == b.ContactCount && Same(a.First, b.First) && Same(a.Second, b.Second);

    private static bool Same(NoseContact a, NoseContact b) =>
        (a.Feature.BladeEdge, a.Feature.BladeVertex, a.Feature.SpringEdge, a.Feature.SpringVertex)
        == (b.Feature.BladeEdge, b.Feature.BladeVertex, b.Feature.SpringEdge, b.Feature.SpringVertex);
}
