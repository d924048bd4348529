using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Tests;

/// <summary>Patterns made and read for a test.</summary>
internal static class Bench
{
    /// <summary>The bench check of a pattern, held to its own targets.</summary>
    public static BenchReport Read(DrawnPattern pattern) =>
        BenchCheck.Run(
            new Placement(pattern.Knife, RigidMotion.Identity, Angle.Zero, DrawnBladeAngleFound: false),
            new BenchSettings { Targets = pattern.Targets, Step = Angle.FromDegrees(1) }
        );

    /// <summary>The pattern of a page that is in no conflict.</summary>
    public static DrawnPattern Make(PatternParameters page)
    {
        (DrawnPattern? pattern, PatternConflict? conflict) = PatternDrawing.Make(page);
        Assert.True(pattern is not null, conflict?.Sentence);
        return pattern;
    }
}
