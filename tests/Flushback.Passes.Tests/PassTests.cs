using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Passes.Tests;

/// <summary>What each kind of pass leaves, on knives where it can be said in advance.</summary>
public sealed class PassTests
{
    [Fact]
    public void Depths_count_at_the_contacts_of_the_stop_front_towards_the_blade()
    {
        PassCase knife = new(KnifeCatalogue.Wagtail);

        DepthPlaces half = DepthPlaces.Of(knife.Knife, knife.Readings, PassCase.HalfStopFace)!.Value;
        DepthPlaces closed = DepthPlaces.Of(knife.Knife, knife.Readings, PassCase.ClosedFace)!.Value;

        // Blade open: the half-stop face looks to the rear, its front is the open corner; the closed face looks down.
        Assert.True(half.Front.At.Y > 0 && half.Rear.At.Y < 0);
        Assert.True(closed.Front.At.X < 0 && closed.Rear.At.X > 0);
        Assert.True(half.Front.IsContact && half.Rear.IsContact && closed.Front.IsContact && closed.Rear.IsContact);
    }

    [Fact]
    public void With_one_contact_the_other_depth_counts_at_the_far_end_of_the_face()
    {
        // The wagtail's open flat touches at the open corner alone; the shoulder does the rest.
        PassCase knife = new(KnifeCatalogue.Wagtail);

        DepthPlaces open = DepthPlaces.Of(knife.Knife, knife.Readings, PassCase.OpenFlat)!.Value;

        Assert.True(open.Rear.IsContact);
        Assert.False(open.Front.IsContact);
        Assert.True(open.Front.At.X > 4);
    }

    [Fact]
    public void The_underside_counts_from_its_foremost_to_its_rearmost_contact_of_all_stops()
    {
        PassCase knife = new(KnifeCatalogue.Wagtail);
        double[] xs =
        [
            .. knife.Readings.Stops.SelectMany(stop =>
                stop.Contacts.Where(contact => contact.SpringFace == SpringFace.Underside)
                    .Select(contact => knife.Knife.SpringAt(-stop.SpringRotation).Apply(contact.At).X)
            ),
        ];

        DepthPlaces places = DepthPlaces.Of(knife.Knife, knife.Readings, PassCase.Underside)!.Value;

        Assert.Equal(xs.Max(), places.Front.At.X, 1e-6);
        Assert.Equal(xs.Min(), places.Rear.At.X, 1e-6);
    }

    [Fact]
    public void A_flat_slice_leaves_one_straight_face_through_both_depths()
    {
        PassCase before = new(KnifeCatalogue.Curlew);
        DepthPlaces places = DepthPlaces.Of(before.Knife, before.Readings, PassCase.HalfStopFace)!.Value;

        PassCase after = before.After(PassCase.Slice(PassCase.HalfStopFace, 0.1, 0.3));

        Edge face = Assert.Single(EdgesOf(after.Knife, BladeFace.HalfStopFace));
        Assert.False(face.IsArc);
        Assert.Equal(0, face.LeftOfCarrierMm(places.Front.At - (places.Front.Normal * 0.1)), 1e-12);
        Assert.Equal(0, face.LeftOfCarrierMm(places.Rear.At - (places.Rear.Normal * 0.3)), 1e-12);
        Assert.Equal(before.Knife.Blade.Edges.Length, after.Knife.Blade.Edges.Length);
    }

    [Fact]
    public void A_slice_of_the_open_flat_prolongs_the_shoulder_down_to_it()
    {
        PassCase before = new(KnifeCatalogue.Wagtail);

        PassCase after = before.After(PassCase.Slice(PassCase.OpenFlat, 0.2, 0.2));

        Edge was = Assert.Single(EdgesOf(before.Knife, BladeFace.Shoulder));
        Edge now = Assert.Single(EdgesOf(after.Knife, BladeFace.Shoulder));
        Assert.Equal(was.Start, now.Start);
        Assert.Equal(0, was.LeftOfCarrierMm(now.End), 1e-12);
        Assert.True(now.LengthMm > was.LengthMm + 0.2);
        Assert.Equal(now.End, Assert.Single(EdgesOf(after.Knife, BladeFace.OpenFlat)).Start);
    }

    [Fact]
    public void Lowering_the_nose_ends_where_the_belly_behind_it_is_hollow()
    {
        PassCase before = new(KnifeCatalogue.Wagtail);
        double rear = DepthPlaces.Of(before.Knife, before.Readings, PassCase.Underside)!.Value.Rear.At.X;

        RemovedMetal removed = before.Try(new LowerNose { FrontDepthMm = 0.01, RearDepthMm = 0.01 }).Result!.Removed;

        Outline off = Assert.Single(removed.Regions);
        Assert.True(off.Bounds.MinX > rear - 10);
        Assert.Equal(removed.AreaMm2, off.AreaMm2, 1e-9);
    }

    [Fact]
    public void A_round_in_the_notch_goes_down_with_the_flat_and_keeps_its_radius()
    {
        Knife round = WithRoundNotch(KnifeCatalogue.Wagtail.ToKnife(), 0.3);
        PassCase before = new(round);

        (PassResult? result, PassProblem? problem) = before.Try(PassCase.Slice(PassCase.OpenFlat, 0.1, 0.1));

        Assert.True(result is not null, problem?.Sentence);
        Edge corner = Assert.Single(EdgesOf(result.Knife, BladeFace.NotchCorner));
        Assert.Equal(0.3, corner.RadiusMm, 1e-9);
        Assert.True(corner.Bulge < 0);
        Assert.Equal(result.Removed.AreaMm2, result.Removed.Regions.Sum(region => region.AreaMm2), 1e-9);
    }

    [Fact]
    public void A_wheel_leaves_a_hollow_of_its_radius_through_both_depths()
    {
        PassCase before = new(KnifeCatalogue.Curlew);
        DepthPlaces places = DepthPlaces.Of(before.Knife, before.Readings, PassCase.ClosedFace)!.Value;

        PassCase after = before.After(
            new WheelSlice(PassCase.ClosedFace, 60) { FrontDepthMm = 0.05, RearDepthMm = 0.02 }
        );

        Edge face = EdgesOf(after.Knife, BladeFace.ClosedFace).Single(edge => edge.IsArc);
        Assert.Equal(60, face.RadiusMm, 1e-9);
        Assert.True(face.Bulge < 0);
        Assert.Equal(0, face.LeftOfCarrierMm(places.Front.At - (places.Front.Normal * 0.05)), 1e-9);
        Assert.Equal(0, face.LeftOfCarrierMm(places.Rear.At - (places.Rear.Normal * 0.02)), 1e-9);
    }

    [Fact]
    public void A_relief_leaves_its_lands_and_its_depth_and_moves_no_reading()
    {
        PassCase before = new(KnifeCatalogue.Curlew);

        PassCase after = before.After(new ReliefArc(PassCase.HalfStopFace, 0.06, 0.7, 0.9));

        Edge[] face = EdgesOf(after.Knife, BladeFace.HalfStopFace);
        Assert.Equal(3, face.Length);
        Assert.Equal(0.7, face[0].LengthMm, 1e-9);
        Assert.Equal(0.9, face[2].LengthMm, 1e-9);
        Assert.Equal(0.06, face[1].SagittaMm, 1e-12);
        Assert.Equal(before.LiftMm(Stop.HalfStop), after.LiftMm(Stop.HalfStop), 1e-9);
        Assert.Single(before.Readings.At(Stop.HalfStop)!.Contacts);
        Assert.Equal(2, after.Readings.At(Stop.HalfStop)!.Contacts.Length);
    }

    [Theory]
    [InlineData("Wagtail")]
    [InlineData("Curlew")]
    [InlineData("Sandpiper")]
    public void A_dressed_kick_keeps_its_radius_and_lets_the_closed_blade_down(string name)
    {
        PassCase before = new(KnifeCatalogue.All.Single(design => design.Name == name));
        double radius = EdgesOf(before.Knife, BladeFace.Kick).Single(edge => edge.IsArc).RadiusMm;

        PassCase after = before.After(new DressKick(0.05));

        Assert.Equal(radius, EdgesOf(after.Knife, BladeFace.Kick).First(edge => edge.IsArc).RadiusMm, 1e-9);
        Assert.True(after.LiftMm(Stop.Closed) < before.LiftMm(Stop.Closed) - 0.005);
        Assert.True(
            after.Readings.At(Stop.Closed)!.RestAngle.Degrees > before.Readings.At(Stop.Closed)!.RestAngle.Degrees
        );
    }

    [Fact]
    public void A_slice_may_take_the_round_of_the_kick_and_leaves_a_corner_that_is_rounded_anew()
    {
        PassCase sliced = PassCase.Placed(KnifeCatalogue.Wagtail).After(PassCase.Slice(PassCase.ClosedFace, 0, 0.4));
        Assert.DoesNotContain(BladeFace.Kick, sliced.Knife.BladeFaces);

        PassCase rounded = sliced.After(new RoundCorner(PassCase.Kick, 0.25));

        Assert.Equal(0.25, EdgesOf(rounded.Knife, BladeFace.Kick).Single().RadiusMm, 1e-9);
    }

    [Theory]
    [InlineData(76)]
    [InlineData(84)]
    public void The_end_face_stands_at_the_angle_asked_for(double degrees)
    {
        PassCase before = new(KnifeCatalogue.Wagtail);

        PassCase after = before.After(new DressEndFace(Angle.FromDegrees(degrees)));

        Edge face = after.Knife.Spring.Edges[after.Knife.SpringFaces.IndexOf(SpringFace.EndFace)];
        Assert.Equal(180 - degrees, face.TangentAt(0).Direction.Degrees, 1e-9);
    }

    [Fact]
    public void A_shorter_tip_ends_so_much_nearer_to_the_pivot_and_comes_with_a_caution()
    {
        PassCase before = new(KnifeCatalogue.Wagtail);
        double Reach(Knife knife) => knife.Blade.Edges.Max(edge => edge.Start.DistanceTo(Point.Origin));

        Simulation simulation = before.Simulate(new ShortenTip(1.5, IsAllowed: true));

        // The cut is square to the line to the tip: its ends lie a hair farther out than its middle.
        double shorter = Reach(before.Knife) - Reach(simulation.End.Placement.Knife);
        Assert.InRange(shorter, 1.4, 1.5);
        Assert.Contains("cut last", Assert.Single(simulation.End.Cautions), StringComparison.Ordinal);
    }

    [Fact]
    public void Faces_keep_their_names_where_the_shape_alone_would_not_tell_them()
    {
        // Taken down by a millimetre, the closed face still is one.
        Knife knife = new PassCase(KnifeCatalogue.Sandpiper).Knife;
        PassCase after = new PassCase(knife)
            .After(new RoundCorner(PassCase.OpenCorner, 0.9))
            .After(new RoundCorner(PassCase.ClosedCorner, 0.8))
            .After(PassCase.Slice(PassCase.ClosedFace, 0.1, 0.1));

        foreach (BladeFace face in knife.BladeFaces.Distinct())
        {
            Assert.Contains(face, after.Knife.BladeFaces);
        }
    }

    [Fact]
    public void A_half_stop_that_a_pass_takes_away_is_told_as_lost_not_as_never_there()
    {
        Simulation simulation = new PassCase(KnifeCatalogue.Wagtail).Simulate(
            PassCase.Slice(PassCase.HalfStopFace, 0, 0.05)
        );

        Assert.Equal([Stop.Open, Stop.HalfStop, Stop.Closed], simulation.End.Readings.Stops.Select(stop => stop.Stop));
    }

    private static Edge[] EdgesOf(Knife knife, BladeFace face) =>
        [.. knife.Blade.Edges.Zip(knife.BladeFaces).Where(named => named.Second == face).Select(named => named.First)];

    /// <summary>The knife with its sharp notch filled by a round.</summary>
    private static Knife WithRoundNotch(Knife knife, double radiusMm)
    {
        int flat = knife.BladeFaces.IndexOf(BladeFace.OpenFlat);
        Edge round = Flushback
            .Geometry.Removal.Fillet.Between(
                knife.Blade.Edges[flat - 1],
                knife.Blade.Edges[flat],
                radiusMm,
                convex: false
            )!
            .Value;
        Vertex[] vertices = [.. knife.Blade.Vertices];
        Vertex[] rounded =
        [
            .. vertices[..flat],
            new Vertex(round.Start, round.Bulge),
            new Vertex(round.End, vertices[flat].Bulge),
            .. vertices[(flat + 1)..],
        ];
        return knife with
        {
            Blade = Outline.FromVertices(rounded),
            BladeFaces = knife.BladeFaces.Insert(flat, BladeFace.NotchCorner),
        };
    }
}
