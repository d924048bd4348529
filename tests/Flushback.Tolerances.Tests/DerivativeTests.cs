using CsCheck;
using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Tolerances;

namespace Flushback.Tolerances.Tests;

/// <summary>Derivatives in closed form against the solver on outlines that were really changed.</summary>
public class DerivativeTests
{
    private const double StepMm = 1e-5;

    // What a step leaves of a second derivative and of the halving of a rest angle.
    private const double Rounding = 1e-5;

    // Slopes to either side that differ by more than curvature makes them: contacts change there.
    private const double TieJump = 1e-3;

    [Fact]
    public void Each_derivative_is_the_slope_of_parts_really_drawn_and_solved() =>
        KnifeGenerator.Designs.Sample(Check, iter: Runs.Few(40));

    [Fact]
    public void Each_derivative_of_the_catalogue_is_the_slope_of_parts_really_drawn_and_solved() =>
        Assert.All(KnifeCatalogue.All, Check);

    [Fact]
    public void Contacts_of_random_knives_seldom_tie_so_that_nearly_all_derivatives_are_those_of_both_sides()
    {
        int ties = 0;
        int all = 0;
        foreach (KnifeDesign design in KnifeGenerator.First(40))
        {
            foreach ((double left, double right, _, _) in Slopes(Studied.Begin(design, Studied.Everything)))
            {
                all++;
                ties += Math.Abs(left - right) > TieJump ? 1 : 0;
            }
        }

        Assert.InRange(ties, 0, all / 20);
    }

    [Fact]
    public void A_blade_that_rests_on_a_single_round_has_its_derivatives_from_differences_and_they_are_told_as_such()
    {
        // A closed face that bulges out, so that the closed spring rides on one place of it.
        Knife flat = KnifeCatalogue.Curlew.ToKnife();
        Vertex[] vertices = [.. flat.Blade.Vertices];
        int face = flat.BladeFaces.IndexOf(BladeFace.ClosedFace);
        vertices[face] = vertices[face] with { Bulge = 0.03 };
        Knife round = flat with { Blade = Outline.FromVertices(vertices) };
        StopReading closed = StopCheck.Run(round, new BenchSettings()).Readings.At(Stop.Closed)!;
        ToleranceStudy study = Studied.Begin(round, Studied.Everything);

        Assert.Single(closed.Contacts);
        Assert.False(study.Of(Outcome.ClosedLift).IsExact);
        Assert.True(study.Of(Outcome.HalfStopLift).IsExact);
        Check("a round closed face", study);
    }

    private static void Check(KnifeDesign design) => Check(design.Name, Studied.Begin(design, Studied.Everything));

    private static void Check(string name, ToleranceStudy study)
    {
        foreach ((double left, double right, double told, string what) in Slopes(study))
        {
            // Where contacts tie the slope jumps: the derivative is that of one side, and only to the first power of the step.
            double rounding = Math.Abs(left - right) > TieJump ? 10 * Rounding : Rounding;
            double room = rounding * (1 + Math.Abs(told));
            Assert.True(
                told >= Math.Min(left, right) - room && told <= Math.Max(left, right) + room,
                $"{name}, {what}: {told}, but {left} from below and {right} from above"
            );
        }
    }

    private static IEnumerable<(double Left, double Right, double Told, string What)> Slopes(ToleranceStudy study)
    {
        for (int i = 0; i < study.List.Dimensions.Length; i++)
        {
            PartReading less = study.ReadPart(study.Off(i, -StepMm));
            PartReading more = study.ReadPart(study.Off(i, StepMm));
            foreach (Derivatives derivatives in study.Derivatives)
            {
                Dimension dimension = study.List.Dimensions[i];
                Tolerance tolerance = study.List.Of(dimension);
                yield return (
                    (derivatives.AsDrawn - less.Of(derivatives.Of)!.Value) / StepMm,
                    (more.Of(derivatives.Of)!.Value - derivatives.AsDrawn) / StepMm,
                    derivatives.PerMm[i],
                    $"{derivatives.Of} to {tolerance.Kind} {tolerance.Face} {dimension.Deviation}"
                );
            }
        }
    }
}
