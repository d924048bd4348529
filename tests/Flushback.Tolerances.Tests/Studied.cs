using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Tolerances;

namespace Flushback.Tolerances.Tests;

/// <summary>Studies of knives of the catalogue.</summary>
internal static class Studied
{
    /// <summary>Everything of the bench varies.</summary>
    public static ToleranceSettings Everything { get; } =
        new()
        {
            PinsMm = 0.02,
            ClearanceMm = 0.01,
            ProfileMm = 0.03,
        };

    public static Placement Placed(KnifeDesign design) => Placed(design.ToKnife());

    public static Placement Placed(Knife knife) => new(knife, RigidMotion.Identity, Angle.Zero, false);

    public static ToleranceStudy Begin(KnifeDesign design, ToleranceSettings settings) =>
        Begin(design.ToKnife(), settings);

    public static ToleranceStudy Begin(Knife knife, ToleranceSettings settings)
    {
        (ToleranceStudy? study, var problems) = ToleranceStudy.Begin(Placed(knife), settings);
        Assert.Empty(problems);
        return study!;
    }

    public static ToleranceReport Run(KnifeDesign design, ToleranceSettings settings)
    {
        (ToleranceReport? report, var problems) = ToleranceStudy.Run(Placed(design), settings);
        Assert.Empty(problems);
        return report!;
    }

    /// <summary>A part with one dimension off.</summary>
    public static double[] Off(this ToleranceStudy study, int dimension, double byMm)
    {
        double[] deviations = new double[study.List.Dimensions.Length];
        deviations[dimension] = byMm;
        return deviations;
    }

    /// <summary>Index of a face's dimension.</summary>
    public static int IndexOf(this ToleranceStudy study, Site face, Deviation deviation) =>
        study.IndexOf(tolerance => tolerance.Face == face, deviation);

    public static int IndexOf(this ToleranceStudy study, ToleranceKind kind, Deviation deviation) =>
        study.IndexOf(tolerance => tolerance.Kind == kind, deviation);

    public static Derivatives Of(this ToleranceStudy study, Outcome outcome) =>
        study.Derivatives.Single(derivatives => derivatives.Of == outcome);

    private static int IndexOf(this ToleranceStudy study, Predicate<Tolerance> tolerance, Deviation deviation)
    {
        int index = study
            .List.Dimensions.ToList()
            .FindIndex(d => tolerance(study.List.Of(d)) && d.Deviation == deviation);
        Assert.True(index >= 0);
        return index;
    }
}
