using Flushback.Catalogue.Designs;
using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Flushback.Geometry.Checking;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Measured;
using Flushback.Mechanism.Plans;

namespace Flushback.Passes.Tests;

/// <summary>Readings of the steel itself: faces a little off the drawing explain them, and the plan starts from there.</summary>
public sealed class MeasuredTests
{
    private const double ExplainedMm = 1e-6;

    // Two ten-thousandths of an inch: what a good dial tells.
    private const double DialMm = 0.0002 * 25.4;

    private static readonly BenchSettings _bench = new();

    public static TheoryData<int> Seeds() => [.. Rested(30)];

    public static TheoryData<int> Few() => [.. Rested(6)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Offset_faces_make_the_knife_read_as_measured(int seed)
    {
        PassCase knife = new(KnifeGenerator.FromSeed(seed));
        MeasuredReadings measured = Higher(knife, 0.04, -0.03);
        MeasuredKnife found = Explained(knife, measured);

        StopReadings readings = StopCheck.Run(found.Placement.Knife, _bench).Readings;
        Assert.Equal(measured.ClosedMm!.Value, readings.At(Stop.Closed)!.LiftMm, ExplainedMm);
        if (measured.HalfStopMm is { } half)
        {
            Assert.Equal(half, readings.At(Stop.HalfStop)!.LiftMm, ExplainedMm);
        }

        Assert.Empty(OutlineCheck.FlawsOf(found.Placement.Knife.Blade.Vertices.AsSpan(), GeometryTolerances.Default));
        Assert.InRange(found.ResidualMm, 0, ExplainedMm);
    }

    /// <remarks>The referee turns polygons and knows nothing of offsets or of the solver.</remarks>
    [Theory]
    [MemberData(nameof(Few))]
    public void The_referee_reads_the_knife_found_as_the_dial_did(int seed)
    {
        PassCase knife = new(KnifeGenerator.FromSeed(seed));
        MeasuredReadings measured = Higher(knife, -0.05, 0.06);
        MeasuredKnife found = Explained(knife, measured);

        BruteForceBench bench = BruteForceBench.For(found.Placement.Knife);
        BenchPose open = bench.OpenRest() ?? bench.PoseAt(found.Readings.Stops[0].RestAngle);
        foreach (StopReading reading in found.Readings.Stops.Skip(1))
        {
            Angle margin = Angle.FromDegrees(0.5);
            BenchPose rest = bench.RestBetween(reading.RestAngle - margin, reading.RestAngle + margin);
            double wanted = (reading.Stop == Stop.Closed ? measured.ClosedMm : measured.HalfStopMm)!.Value;
            Assert.Equal(wanted, bench.LiftMm(open.SpringRotation, rest.SpringRotation), DialMm);
        }
    }

    /// <remarks>
    /// Offsets are made at random and the dial read; whatever is found must not be longer than what made it (least norm).
    /// </remarks>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void No_shorter_offsets_would_explain_the_readings(int seed)
    {
        PassCase knife = new(KnifeGenerator.FromSeed(seed));
        MeasuredKnife first = Explained(knife, Higher(knife, 0.05, -0.04) with { OpenHeightMm = Height(knife) - 0.05 });
        MeasuredKnife found = Explained(knife, ReadingsOf(first, height: false));

        Assert.InRange(Length(found), 0, Length(first) + 1e-5);
    }

    /// <remarks>With the height of the back open too there are as many readings as offsets, and one answer nearby.</remarks>
    [Theory]
    [MemberData(nameof(Seeds))]
    public void With_the_height_open_the_offsets_themselves_are_found_again(int seed)
    {
        PassCase knife = new(KnifeGenerator.FromSeed(seed));
        MeasuredKnife first = Explained(knife, Higher(knife, 0.03, 0.02));
        MeasuredKnife found = Explained(knife, ReadingsOf(first, height: true));

        Assert.Equal(first.Offsets.Length, found.Offsets.Length);
        foreach ((FaceOffset a, FaceOffset b) in first.Offsets.Zip(found.Offsets))
        {
            Assert.Equal(a.FrontMm, b.FrontMm, 1e-4);
            Assert.Equal(b.FrontMm, b.RearMm, 1e-12);
        }
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void What_was_drawn_needs_no_offsets(int seed)
    {
        PassCase knife = new(KnifeGenerator.FromSeed(seed));
        MeasuredKnife found = Explained(knife, Higher(knife, 0, 0));

        Assert.All(found.Offsets, offset => Assert.Equal((0, 0), (offset.FrontMm, offset.RearMm)));
        Assert.Equal(knife.Knife.Blade.Edges, found.Placement.Knife.Blade.Edges);
    }

    [Theory]
    [MemberData(nameof(Seeds))]
    public void Faces_keep_their_names_and_rounds_their_radius(int seed)
    {
        PassCase knife = new(KnifeGenerator.FromSeed(seed));
        Knife found = Explained(knife, Higher(knife, 0.05, 0.05)).Placement.Knife;

        Assert.Equal(knife.Knife.BladeFaces, found.BladeFaces);
        Assert.Equal(knife.Knife.Spring, found.Spring);
        Assert.All(
            knife.Knife.Blade.Edges.Zip(found.Blade.Edges).Where(pair => pair.First.IsArc),
            pair => Assert.Equal(pair.First.RadiusMm, pair.Second.RadiusMm, pair.First.RadiusMm * 1e-6)
        );
    }

    /// <remarks>A tilted face turns the blade at rest (elementary); parallel faces alone hardly do.</remarks>
    [Theory]
    [MemberData(nameof(Few))]
    public void A_measured_rest_angle_tilts_the_face(int seed)
    {
        PassCase knife = new(KnifeGenerator.FromSeed(seed));
        StopReading closed = knife.Readings.At(Stop.Closed)!;
        Angle measured = closed.RestAngle + Angle.FromDegrees(0.3);
        MeasuredKnife found = Explained(knife, Higher(knife, 0.02, 0.02) with { ClosedRestAngle = measured });

        Assert.Equal(measured.Radians, found.Readings.At(Stop.Closed)!.RestAngle.Radians, 1e-6);
        Assert.Equal(closed.LiftMm + 0.02, found.Readings.At(Stop.Closed)!.LiftMm, ExplainedMm);
        FaceOffset face = Assert.Single(found.Offsets, offset => offset.Face == BladeFace.ClosedFace);
        Assert.True(Math.Abs(face.FrontMm - face.RearMm) > 0.005);
    }

    /// <remarks>
    /// Of 2,342 rest angles three tenths of a degree off the drawn one three are refused. The referee finds no place for the
    /// spring with the blade folded so far, and one at the angle drawn: the edge lies in the tail.
    /// </remarks>
    [Theory]
    [InlineData(81)]
    [InlineData(527)]
    [InlineData(554)]
    public void A_rest_angle_at_which_the_blade_would_lie_in_the_tail_of_the_spring_is_refused_for_that(int seed)
    {
        PassCase knife = new(KnifeGenerator.FromSeed(seed));
        Angle drawn = knife.Readings.At(Stop.Closed)!.RestAngle;
        Angle folded = drawn + Angle.FromDegrees(0.3);
        MeasuredProblem problem = Refused(knife, Higher(knife, 0.02, 0.02) with { ClosedRestAngle = folded });

        Assert.Equal(MeasuredReasons.NotExplained, problem.Reason);
        Assert.Contains("in the spring behind the centre pin", problem.Sentence, StringComparison.Ordinal);
        BruteForceBench bench = BruteForceBench.For(knife.Knife);
        Assert.True(bench.PoseAt(drawn).IsFree);
        Assert.False(bench.PoseAt(folded).IsFree);
    }

    [Fact]
    public void A_plan_from_readings_starts_at_the_knife_that_reads_so_and_lands_on_the_targets()
    {
        int seen = 0;
        foreach (int seed in PlanClosure.HighSeeds().Take(8))
        {
            PassCase knife = new(KnifeGenerator.FromSeed(seed));
            MeasuredReadings measured = Higher(knife, 0.03, 0.04);
            (PlanReport? plan, MeasuredProblem? problem) = Planning.FromMeasured(
                PassCase.PlacementOf(knife.Knife),
                measured,
                new PlanSettings()
            );

            Assert.True(plan is not null, problem?.Sentence);
            Assert.True(plan.ReachesTargets);
            Assert.Equal(measured.ClosedMm!.Value, plan.Simulation.Start.Readings.At(Stop.Closed)!.LiftMm, ExplainedMm);
            Assert.Equal(plan.Measured!.Readings.Stops[0].SpringRotation, plan.Simulation.Start.Readings.OpenRotation);
            Assert.Equal(15 * StopTargets.MmPerThou, plan.Simulation.End.Readings.At(Stop.Closed)!.LiftMm, 1e-5);
            seen++;
        }

        Assert.Equal(8, seen);
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(-0.9)]
    [InlineData(30.0)]
    public void A_reading_beyond_small_offsets_is_refused_in_a_sentence(double offMm)
    {
        PassCase knife = new(KnifeCatalogue.Wagtail);
        MeasuredProblem problem = Refused(knife, Higher(knife, 0, offMm));

        Assert.Equal(MeasuredReasons.NotExplained, problem.Reason);
        Assert.Contains("0.250 mm (9.8 thou)", problem.Sentence, StringComparison.Ordinal);
        Assert.Contains("the reading closed", problem.Sentence, StringComparison.Ordinal);
    }

    /// <remarks>
    /// Open flat and closed face each move the reading about as much as themselves, either way; twice the limit lies about
    /// at the end of what both can do (elementary).
    /// </remarks>
    [Fact]
    public void The_limit_of_each_face_is_used_before_readings_are_refused()
    {
        PassCase knife = new(KnifeCatalogue.Wagtail);
        MeasuredKnife found = Explained(knife, Higher(knife, 0, 0.2));
        Assert.All(found.Offsets, offset => Assert.InRange(Math.Abs(offset.FrontMm), 0, 0.25));

        MeasuredProblem problem = Refused(knife, Higher(knife, 0, 0.2), mostMm: 0.05);
        Assert.Equal(MeasuredReasons.NotExplained, problem.Reason);
    }

    [Fact]
    public void Nothing_measured_is_refused()
    {
        PassCase knife = new(KnifeCatalogue.Wagtail);
        Assert.Equal(MeasuredReasons.NothingMeasured, Refused(knife, new MeasuredReadings()).Reason);
        Assert.Equal(
            MeasuredReasons.NothingMeasured,
            Refused(knife, new MeasuredReadings { ClosedMm = double.NaN }).Reason
        );
    }

    [Fact]
    public void A_reading_at_a_stop_the_knife_has_not_is_refused()
    {
        PassCase knife = new(KnifeCatalogue.All.First(design => !design.Tang.HasHalfStop));
        MeasuredProblem problem = Refused(knife, new MeasuredReadings { HalfStopMm = 0.1, ClosedMm = 0.4 });

        Assert.Equal(MeasuredReasons.NoSuchStop, problem.Reason);
        Assert.Contains("at the half stop", problem.Sentence, StringComparison.Ordinal);
    }

    /// <summary>Random knives that come to rest at each of their stops.</summary>
    private static IEnumerable<int> Rested(int count) =>
        Enumerable
            .Range(1, int.MaxValue)
            .Where(seed => new PassCase(KnifeGenerator.FromSeed(seed)).Readings.Stops.All(stop => stop.Rests))
            .Take(count);

    private static MeasuredReadings Higher(PassCase knife, double halfStopMm, double closedMm) =>
        new()
        {
            HalfStopMm = knife.Readings.At(Stop.HalfStop)?.LiftMm + halfStopMm,
            ClosedMm = knife.LiftMm(Stop.Closed) + closedMm,
        };

    private static double Height(PassCase knife) => knife.Knife.LiftMm(Angle.Zero, knife.Readings.OpenRotation);

    private static MeasuredReadings ReadingsOf(MeasuredKnife knife, bool height) =>
        new()
        {
            HalfStopMm = knife.Readings.At(Stop.HalfStop)?.LiftMm,
            ClosedMm = knife.Readings.At(Stop.Closed)!.LiftMm,
            OpenHeightMm = height ? knife.Placement.Knife.LiftMm(Angle.Zero, knife.Readings.OpenRotation) : null,
        };

    private static double Length(MeasuredKnife knife) =>
        Math.Sqrt(knife.Offsets.Sum(offset => offset.FrontMm * offset.FrontMm));

    private static MeasuredKnife Explained(PassCase knife, MeasuredReadings measured)
    {
        (MeasuredKnife? found, MeasuredProblem? problem) = Explain(knife, measured, MeasuredKnife.UsualMostOffsetMm);
        Assert.True(found is not null, problem?.Sentence);
        return found;
    }

    private static MeasuredProblem Refused(
        PassCase knife,
        MeasuredReadings measured,
        double mostMm = MeasuredKnife.UsualMostOffsetMm
    )
    {
        (MeasuredKnife? found, MeasuredProblem? problem) = Explain(knife, measured, mostMm);
        Assert.Null(found);
        Assert.NotNull(problem);
        return problem;
    }

    private static (MeasuredKnife? Found, MeasuredProblem? Problem) Explain(
        PassCase knife,
        MeasuredReadings measured,
        double mostMm
    ) => MeasuredKnife.Explain(PassCase.PlacementOf(knife.Knife), measured, mostMm, _bench);
}
