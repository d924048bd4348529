using System.Globalization;
using Flushback.Catalogue.Referee;
using Flushback.Geometry;
using Flushback.Geometry.Checking;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Parameters;
using Xunit.Abstractions;

namespace Flushback.Patterns.Tests;

/// <summary>What holds for every pattern, held on 500 random pages.</summary>
public sealed class RandomPatternTests(ITestOutputHelper output)
{
    // Half of a sagitta of the referee, and its bisection, as in the tests of the bench.
    private const double RefereeMm = 2e-6;

    [Fact]
    public void Few_pages_in_the_proportions_of_a_knife_are_in_conflict()
    {
        int last = RandomPatterns.FiveHundred[^1].Seed;
        int drawn = RandomPatterns.FiveHundred.Count;
        double share = (double)(last - drawn) / last;
        output.WriteLine(
            string.Create(CultureInfo.InvariantCulture, $"{last - drawn} of {last} pages in conflict, {share:P1}")
        );
        foreach (
            IGrouping<string, string> kind in Enumerable
                .Range(1, last)
                .Select(seed => (Seed: seed, PatternDrawing.Make(RandomPatterns.Page(seed)).Conflict))
                .Where(page => page.Conflict is not null)
                .GroupBy(
                    page => string.Join(", ", page.Conflict!.Parameters),
                    page => $"seed {page.Seed}: {page.Conflict!.Sentence}"
                )
                .OrderByDescending(kind => kind.Count())
        )
        {
            output.WriteLine($"{kind.Count()} of {kind.Key}, {kind.First()}");
        }

        Assert.True(share < 0.1, $"{last - drawn} of {last} pages are in conflict.");
    }

    [Fact]
    public void The_dial_reads_what_is_wanted_at_every_true_rest()
    {
        foreach ((int seed, DrawnPattern pattern) in RandomPatterns.FiveHundred)
        {
            ReadingParameters wanted = pattern.Parameters.Readings;
            BenchReport report = Bench.Read(pattern);
            StopReading closed = report.At(Stop.Closed)!;
            Assert.All(report.Stops, stop => Assert.True(stop.Rests, $"seed {seed}: no rest {stop.Stop}"));
            Near(0, report.At(Stop.Open)!.RestAngle.Degrees, 1e-6, seed);
            Near(wanted.ClosedMm, closed.LiftMm, 1e-6, seed);
            Near(wanted.ClosedRestDeg, closed.RestAngle.Degrees, 1e-6, seed);
            Assert.Equal(pattern.Parameters.Tang.HasHalfStop, report.HasHalfStop);
            if (report.At(Stop.HalfStop) is { } half)
            {
                Near(wanted.HalfStopMm, half.LiftMm, 1e-6, seed);
                Near(wanted.HalfStopRestDeg, half.RestAngle.Degrees, 1e-6, seed);
            }
        }
    }

    // Source: the referee, by polygons, overlap and bisection; it knows nothing of patterns or of the solver.
    [Fact]
    public void The_referee_reads_the_same_at_those_angles()
    {
        Parallel.ForEach(
            RandomPatterns.FiveHundred,
            item =>
            {
                ReadingParameters wanted = item.Pattern.Parameters.Readings;
                BruteForceBench referee = BruteForceBench.For(item.Pattern.Knife);
                Angle zero = referee.PoseAt(Angle.Zero).SpringRotation;
                double Reads(double degrees) =>
                    referee.LiftMm(zero, referee.PoseAt(Angle.FromDegrees(degrees)).SpringRotation);

                Near(wanted.ClosedMm, Reads(wanted.ClosedRestDeg), RefereeMm, item.Seed);
                if (item.Pattern.Parameters.Tang.HasHalfStop)
                {
                    Near(wanted.HalfStopMm, Reads(wanted.HalfStopRestDeg), RefereeMm, item.Seed);
                }
            }
        );
    }

    // Source: the referee; a golden-section search over the lift, and the shoulder met from mid-swing.
    [Fact]
    public void The_referee_finds_the_rests_where_they_were_wanted()
    {
        Parallel.ForEach(
            RandomPatterns.FiveHundred.Where((_, i) => i % 10 == 0),
            item =>
            {
                ReadingParameters wanted = item.Pattern.Parameters.Readings;
                BruteForceBench referee = BruteForceBench.For(item.Pattern.Knife);
                Near(0, referee.OpenStop()!.Value.BladeAngle.Degrees, 1e-4, item.Seed);
                Rests(wanted.ClosedRestDeg);
                if (item.Pattern.Parameters.Tang.HasHalfStop)
                {
                    Rests(wanted.HalfStopRestDeg);
                }

                void Rests(double degrees) =>
                    Near(
                        degrees,
                        referee
                            .RestBetween(Angle.FromDegrees(degrees - 2), Angle.FromDegrees(degrees + 1))
                            .BladeAngle.Degrees,
                        1e-4,
                        item.Seed
                    );
            }
        );
    }

    [Fact]
    public void Every_outline_is_sound_and_runs_counter_clockwise()
    {
        foreach ((int seed, DrawnPattern pattern) in RandomPatterns.FiveHundred)
        {
            foreach (
                Outline outline in pattern.Pieces.SelectMany(piece =>
                    piece.Marks.Select(mark => mark.Outline).Append(piece.Finished).Append(piece.Rough)
                )
            )
            {
                Assert.True(outline.IsCounterClockwise, $"seed {seed}");
                Assert.True(
                    OutlineCheck.FlawsOf(outline.Vertices.AsSpan(), GeometryTolerances.Default).IsEmpty,
                    $"seed {seed}"
                );
            }
        }
    }

    [Fact]
    public void A_check_of_the_drawing_finds_every_face_that_was_meant()
    {
        foreach ((int seed, DrawnPattern pattern) in RandomPatterns.FiveHundred)
        {
            (Placement? placement, var problems) = KnifePlacement.Place(pattern.ToDrawn());
            Assert.True(problems.IsEmpty, $"seed {seed}: {problems.FirstOrDefault()?.Sentence}");
            Assert.True(
                pattern.Knife.BladeFaces.SequenceEqual(placement!.Knife.BladeFaces),
                $"seed {seed}: {string.Join(" ", pattern.Knife.BladeFaces.Zip(placement.Knife.BladeFaces).Where(pair => pair.First != pair.Second))}"
            );
            Assert.True(
                pattern.Knife.SpringFaces.SequenceEqual(placement.Knife.SpringFaces),
                $"seed {seed}: {string.Join(" ", pattern.Knife.SpringFaces.Zip(placement.Knife.SpringFaces).Where(pair => pair.First != pair.Second))}"
            );
        }
    }

    [Fact]
    public void No_bench_finding_is_a_fault()
    {
        Dictionary<string, int> counts = [];
        foreach ((int seed, DrawnPattern pattern) in RandomPatterns.FiveHundred)
        {
            foreach (Mechanism.Findings.Finding finding in Bench.Read(pattern).Findings)
            {
                Assert.NotEqual(Mechanism.Findings.Severity.Fault, finding.Severity);
                counts[finding.Code] = counts.GetValueOrDefault(finding.Code) + 1;
            }
        }

        output.WriteLine(string.Join(", ", counts.Select(pair => $"{pair.Key} {pair.Value}")));
    }

    private static void Near(double wanted, double found, double tolerance, int seed) =>
        Assert.True(
            Math.Abs(wanted - found) <= tolerance,
            string.Create(CultureInfo.InvariantCulture, $"seed {seed}: {found:R} where {wanted:R} is wanted")
        );
}
