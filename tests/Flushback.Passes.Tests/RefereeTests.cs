using Flushback.Catalogue.Designs;
using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Passes.Tests;

/// <summary>Readings after passes against the referee of polygons and bisection, which knows nothing of passes.</summary>
public sealed class RefereeTests
{
    // Polygons good to a tenth of a micrometre, and a rest told by the lowest point between two angles.
    private const double LiftToleranceMm = 2e-6;

    public static TheoryData<int> Seeds() => [.. Enumerable.Range(1, 12)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void After_passes_the_stops_read_as_the_referee_reads_the_outlines(int seed)
    {
        Knife knife = Worked(seed);
        StopReadings readings = StopCheck.Run(knife, new BenchSettings()).Readings;
        BruteForceBench bench = BruteForceBench.For(knife);
        foreach (StopReading reading in readings.Stops.Where(stop => stop.Rests))
        {
            BenchPose pose = bench.PoseAt(reading.RestAngle);
            Assert.Equal(0, knife.LiftMm(pose.SpringRotation, reading.SpringRotation), LiftToleranceMm);
            if (reading.Stop != Stop.Open)
            {
                Angle margin = Angle.FromDegrees(0.2);
                BenchPose rest = bench.RestBetween(reading.RestAngle - margin, reading.RestAngle + margin);
                Assert.Equal(0, knife.LiftMm(rest.SpringRotation, reading.SpringRotation), LiftToleranceMm);
            }
        }
    }

    /// <summary>A random knife after up to five passes, those that can be made.</summary>
    private static Knife Worked(int seed)
    {
        PassCase knife = new(KnifeGenerator.FromSeed(seed));
        Pass[] passes =
        [
            PassCase.Slice(PassCase.OpenFlat, 0.02, 0.05),
            new RoundCorner(PassCase.OpenCorner, 0.65),
            PassCase.Slice(PassCase.HalfStopFace, 0.03 + (0.001 * seed), 0.01),
            new ReliefArc(PassCase.HalfStopFace, 0.16, 0.8, 0.8),
            new WheelSlice(PassCase.ClosedFace, 60) { FrontDepthMm = 0.01, RearDepthMm = 0.02 },
            new RoundCorner(PassCase.ClosedCorner, 0.7),
            new DressKick(0.03),
            new LowerNose { FrontDepthMm = 0.01, RearDepthMm = 0 },
        ];
        int made = 0;
        foreach (Pass pass in passes)
        {
            if (knife.Try(pass).Result is { } result)
            {
                made++;
                knife = new PassCase(result.Knife);
            }
        }

        Assert.True(made >= 4);
        return knife.Knife;
    }
}
