using System.Collections.Immutable;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Measured.Solving;

namespace Flushback.Mechanism.Measured;

/// <summary>A knife as the dial found it: the drawn one with faces a little higher or lower, so that it reads as was measured.</summary>
/// <remarks>
/// The readings are fewer than what may differ from the drawing, so the offsets are the least that explain them: the sum of
/// their squares is smallest. Open flat, half-stop face and closed face are moved parallel to themselves; where the rest
/// angle of a stop was measured too, its face may tilt as well. Metal more on the open flat makes every other stop read
/// lower, because the dial is zeroed there.
/// </remarks>
public sealed record MeasuredKnife
{
    /// <summary>Most that a face may lie off the drawing, in millimetres, unless something else is said; ours.</summary>
    public const double UsualMostOffsetMm = 0.25;

    /// <summary>The knife that reads as measured, with the way back to the drawing.</summary>
    public required Placement Placement { get; init; }

    /// <summary>How far each face lies off the drawing, in the order open flat, half-stop face, closed face.</summary>
    public required ImmutableArray<FaceOffset> Offsets { get; init; }

    /// <summary>What was measured.</summary>
    public required MeasuredReadings Measured { get; init; }

    /// <summary>How the knife as drawn reads.</summary>
    public required StopReadings Drawn { get; init; }

    /// <summary>How the knife with these offsets reads.</summary>
    public required StopReadings Readings { get; init; }

    /// <summary>Largest difference left between what it reads and what was measured, in millimetres of lift.</summary>
    public required double ResidualMm { get; init; }

    /// <summary>Finds the least offsets of the faces that explain what was measured.</summary>
    /// <param name="drawn">The knife as drawn.</param>
    /// <param name="measured">What the dial showed.</param>
    /// <param name="mostOffsetMm">Most that a face may lie off the drawing at either end, above zero.</param>
    /// <param name="bench">How the bench is read.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    /// <returns>The knife, or why the readings cannot be explained; exactly one of the two.</returns>
    /// <exception cref="OperationCanceledException">When cancelled.</exception>
    public static (MeasuredKnife? Knife, MeasuredProblem? Problem) Explain(
        Placement drawn,
        MeasuredReadings measured,
        double mostOffsetMm,
        BenchSettings bench,
        CancellationToken cancellation = default
    )
    {
        ArgumentNullException.ThrowIfNull(drawn);
        ArgumentNullException.ThrowIfNull(measured);
        ArgumentNullException.ThrowIfNull(bench);
        ArgumentOutOfRangeException.ThrowIfNegativeOrZero(mostOffsetMm);
        StopReadings readings = StopCheck.Run(drawn.Knife, bench, cancellation).Readings;
        Knife knife = drawn.Knife with { HasHalfStop = readings.HasHalfStop };
        if (MeasuredCheck.Refuse(measured, readings) is { } refused)
        {
            return (null, refused);
        }

        OffsetSearch search = OffsetSearch.Run(knife, readings, measured, mostOffsetMm, bench, cancellation);
        if (!search.HasExplained)
        {
            return (null, MeasuredCheck.NotExplained(search, measured, mostOffsetMm));
        }

        return (
            new MeasuredKnife
            {
                Placement = drawn with { Knife = search.Knife },
                Offsets = search.Offsets,
                Measured = measured,
                Drawn = readings,
                Readings = search.Readings,
                ResidualMm = search.ResidualMm,
            },
            null
        );
    }
}

/// <summary>How far a face lies off the drawing, square to it; positive where there is more metal than drawn.</summary>
/// <param name="Face">The face.</param>
/// <param name="FrontMm">At its front place, as passes count it; see <see cref="Passes.DepthPlaces"/>.</param>
/// <param name="RearMm">At its rear place; the same as in front where the face was moved parallel to itself.</param>
public readonly record struct FaceOffset(BladeFace Face, double FrontMm, double RearMm);
