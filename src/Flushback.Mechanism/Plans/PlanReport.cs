using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Measured;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Plans;

/// <summary>The least removal that lands on the targets, or comes nearest to them.</summary>
public sealed record PlanReport
{
    /// <summary>What was asked for.</summary>
    public required PlanSettings Settings { get; init; }

    /// <summary>The passes in the order to make them, the readings expected after each, and the knife at the end.</summary>
    public required Simulation Simulation { get; init; }

    /// <summary>What stops the plan; empty when every target is reached.</summary>
    public required ImmutableArray<PlanObstacle> Obstacles { get; init; }

    /// <summary>What holds the amounts where they are; null when nothing has to be sliced or the plan stops short.</summary>
    public PlanOptimum? Optimum { get; init; }

    /// <summary>The knife as the dial found it, from which the plan starts; null when it starts from the drawing.</summary>
    public MeasuredKnife? Measured { get; init; }

    /// <summary>True when the passes reach every target.</summary>
    public bool ReachesTargets => Obstacles.IsEmpty;

    /// <summary>Area of all that comes off.</summary>
    public double RemovedMm2 => Simulation.Steps.Sum(step => step.Removed?.AreaMm2 ?? 0);
}

/// <summary>Why removal alone does not reach a target.</summary>
/// <param name="Constraint">Which constraint stops it.</param>
/// <param name="Stop">At which stop.</param>
/// <param name="ShortMm">By how much the reading stays below its target; 0 where it is no matter of a reading.</param>
/// <param name="Sentence">What is wrong and where.</param>
/// <param name="Remedies">What would do it, each in one sentence.</param>
/// <param name="OpenFlatNeededMm">What would have to come off the open flat in all, about; null where that would not help.</param>
/// <param name="PivotMoveMm">
/// How far the pivot's hole would have to lie elsewhere in a blade, to the front (+x of the open blade) and towards the
/// spine (+y); null where that does not help.
/// </param>
/// <param name="ProuderFaceMm">How much prouder the face of the stop would have to stand on a new blade; null where no reading is missed.</param>
/// <param name="CornerRadiusMm">A least corner radius with which the open blade rests in its window; null where the corners are no matter.</param>
/// <param name="ThinnerNoseMm">What would have to come off the spring's nose at the rear of its underside; null where that does not help.</param>
public sealed record PlanObstacle(
    PlanConstraint Constraint,
    Stop Stop,
    double ShortMm,
    string Sentence,
    ImmutableArray<string> Remedies,
    double? OpenFlatNeededMm = null,
    Vector? PivotMoveMm = null,
    double? ProuderFaceMm = null,
    double? CornerRadiusMm = null,
    double? ThinnerNoseMm = null
);

/// <summary>What a plan can fail on.</summary>
public enum PlanConstraint
{
    /// <summary>The stop reads low, and a pass cannot raise it beyond what the open flat may give.</summary>
    ReadsLow,

    /// <summary>The blade rests outside its window of angles and the face cannot be turned.</summary>
    RestAngle,

    /// <summary>No blade angle in the window brings the tip to its depth.</summary>
    TipDepth,

    /// <summary>The blade does not rest at the stop.</summary>
    NoRest,

    /// <summary>A pass would take metal that has to stay.</summary>
    Metal,

    /// <summary>The search came to no end; the passes are the best it found.</summary>
    NotSettled,
}

/// <summary>Why no smaller removal lands on the targets: the conditions of Karush, Kuhn and Tucker at the amounts found.</summary>
/// <param name="OpenFlatMm">Off the open flat at either end.</param>
/// <param name="OpenFlatMm2PerMm">Area more for each millimetre more off the open flat; 0 when it is left.</param>
/// <param name="Faces">The faces sliced; the open flat among them where more comes off one of its ends.</param>
public sealed record PlanOptimum(double OpenFlatMm, double OpenFlatMm2PerMm, ImmutableArray<FaceOptimum> Faces);

/// <summary>The balance at one face.</summary>
/// <param name="Stop">The stop it serves.</param>
/// <param name="FrontMm">Off its front place, in all slices.</param>
/// <param name="RearMm">Off its rear place.</param>
/// <param name="Held">What keeps the tilt of the cut where it is.</param>
/// <param name="ReadingMultiplier">Area more for each millimetre the stop is to read lower, in mm2/mm; positive at an optimum.</param>
/// <param name="HeldMultiplier">
/// Area saved for each unit by which <see cref="Held"/> gives way, in mm2/mm for a depth and mm2/rad for an angle;
/// positive at an optimum, 0 where the tilt is held by nothing.
/// </param>
/// <param name="ResidualMm2PerMm">What is left of the gradient after both; 0 at an optimum, but where contacts change.</param>
public sealed record FaceOptimum(
    Stop Stop,
    double FrontMm,
    double RearMm,
    TiltHeld Held,
    double ReadingMultiplier,
    double HeldMultiplier,
    double ResidualMm2PerMm
);

/// <summary>What keeps the tilt of a cut from changing further.</summary>
public enum TiltHeld
{
    /// <summary>Nothing: tilting either way takes more metal.</summary>
    ByNothing,

    /// <summary>The front depth cannot be less than nothing.</summary>
    ByFrontDepth,

    /// <summary>The rear depth cannot be less than nothing.</summary>
    ByRearDepth,

    /// <summary>The blade would rest at too small an angle.</summary>
    ByLeastAngle,

    /// <summary>The blade would rest at too large an angle.</summary>
    ByMostAngle,

    /// <summary>The contacts change there: tilting takes more metal either way, though no gradient vanishes.</summary>
    ByContacts,
}
