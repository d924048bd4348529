using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Handle.Solving;

namespace Flushback.Handle.Tests.Solving;

public class RestTests
{
    public static TheoryData<int> Knives => [.. TenKnives.Indices];

    [Theory]
    [MemberData(nameof(Knives))]
    public void At_rest_the_blade_feels_no_torque_and_every_contact_presses(int knife)
    {
        HandleCase handle = new(TenKnives.All[knife]);
        foreach (HandleRest rest in Rests(handle).Where(rest => rest.Rests))
        {
            Assert.InRange(rest.Contacts.Length, 2, 3);
            Assert.All(rest.Contacts, contact => Assert.True(contact.ForceN > 0));
            double torque = rest.Contacts.Sum(contact => contact.BladeTorqueNmm);
            Assert.Equal(0, torque, 1e-5 * rest.Contacts.Max(c => c.ForceN));
        }
    }

    [Theory]
    [MemberData(nameof(Knives))]
    public void The_energy_rises_on_both_sides_of_a_rest(int knife)
    {
        HandleCase handle = new(TenKnives.All[knife]);
        foreach (HandleRest rest in Rests(handle).Where(rest => rest.Rests))
        {
            Angle aside = Angle.FromDegrees(0.002);
            foreach (Angle to in new[] { rest.State.BladeAngle - aside, rest.State.BladeAngle + aside })
            {
                NoseState state = handle.Solver.At(to, rest.State.Pose);
                Assert.True(!state.IsPossible || state.EnergyNmm > rest.State.EnergyNmm);
            }
        }
    }

    [Fact]
    public void The_shoulder_bears_part_of_the_load_when_open()
    {
        HandleRest open = new HandleRestFinder(
            new HandleCase(KnifeCatalogue.Wagtail).Solver,
            new HandleCase(KnifeCatalogue.Wagtail).Track
        ).Open();

        // Its normal points to the rear, the seat's points up.
        Assert.Contains(open.Contacts, contact => contact.Feature.Normal.X < -0.9 && contact.ForceN > 10);
        Assert.Contains(open.Contacts, contact => contact.Feature.Normal.Y > 0.9 && contact.ForceN > 10);
    }

    [Fact]
    public void A_round_tang_has_no_half_stop() =>
        Assert.False(Finder(new HandleCase(KnifeCatalogue.Dunlin)).Near(Angle.FromDegrees(90)).Rests);

    [Fact]
    public void Without_preload_the_blade_rests_where_it_does_on_the_bench()
    {
        HandleCase handle = new(KnifeCatalogue.Wagtail, preloadMm: 1e-6);
        Angle bench = handle.BenchStops.Open().Pose.BladeAngle;
        Assert.Equal(bench.Degrees, Finder(handle).Open().State.BladeAngle.Degrees, 1e-4);
    }

    [Fact]
    public void A_rest_in_the_last_fraction_of_a_step_before_nothing_fits_is_found()
    {
        HandleCase handle = new(KnifeCatalogue.Wagtail);
        HandleRest closed = Finder(handle).Near(Angle.FromDegrees(180));
        NoseState[] upTo = [.. handle.Track.States.TakeWhile(s => s.BladeAngle < closed.State.BladeAngle)];
        NoseState beyond = handle.Track.States[upTo.Length] with { IsPossible = false };
        HandleRest found = new HandleRestFinder(handle.Solver, new NoseTrack(handle.Solver, [.. upTo, beyond])).Near(
            Angle.FromDegrees(180)
        );
        Assert.True(found.Rests);
        Assert.Equal(closed.State.BladeAngle.Degrees, found.State.BladeAngle.Degrees, 1e-8);
        Assert.Equal(closed.Contacts.Length, found.Contacts.Length);
    }

    [Theory]
    [MemberData(nameof(Knives))]
    public void Where_the_blade_does_not_rest_the_last_possible_place_is_told(int knife)
    {
        HandleCase handle = new(TenKnives.All[knife]);
        HandleRest past = Finder(handle).Near(Angle.FromDegrees(-40));
        Assert.False(past.Rests);
        Assert.True(past.State.IsPossible);
        Assert.Equal(handle.Track.States.First(state => state.IsPossible), past.State);
    }

    private static IEnumerable<HandleRest> Rests(HandleCase handle)
    {
        HandleRestFinder finder = Finder(handle);
        return [finder.Open(), finder.Near(Angle.FromDegrees(90)), finder.Near(Angle.FromDegrees(180))];
    }

    private static HandleRestFinder Finder(HandleCase handle) => new(handle.Solver, handle.Track);
}
