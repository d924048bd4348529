using Flushback.Catalogue.Designs;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;

namespace Flushback.Handle.Tests;

/// <summary>Knives placed and read on the bench, to be put in the handle.</summary>
internal static class Placed
{
    public static BenchReport OnTheBench(DrawnKnife drawn)
    {
        (Placement? placement, var problems) = KnifePlacement.Place(drawn);
        Assert.Empty(problems);
        return BenchCheck.Run(placement!, new BenchSettings());
    }

    public static BenchReport OnTheBench(KnifeDesign design) => OnTheBench(design.ToDrawn());

    public static HandleReport InTheHandle(KnifeDesign design, HandleSettings? settings = null)
    {
        (HandleReport? report, var problems) = HandleCheck.Run(OnTheBench(design), settings ?? new HandleSettings());
        Assert.Empty(problems);
        return report!;
    }

    public static KnifeProblem Refused(DrawnKnife drawn, HandleSettings settings)
    {
        (HandleReport? report, var problems) = HandleCheck.Run(OnTheBench(drawn), settings);
        Assert.Null(report);
        KnifeProblem problem = Assert.Single(problems);

        // One sentence.
        Assert.True(char.IsUpper(problem.Sentence[0]));
        Assert.EndsWith(".", problem.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain(". ", problem.Sentence, StringComparison.Ordinal);
        return problem;
    }
}
