using System.Collections.Immutable;
using Flushback.Geometry.Chains;

namespace Flushback.Geometry.Offsets;

/// <summary>All points within a distance of an area, or farther than it from everything outside: again lines and arcs.</summary>
/// <remarks>
/// Outward it is the area swept by a disc whose centre moves over the area; corners become arcs about them. Inward it is
/// where the centre of a disc can lie that stays inside; corners stay corners. Nothing is flattened. The area may come
/// apart inward where a neck is narrower than twice the distance, and outward a bay may close and leave a hole. What is
/// left of a part thinner than some nanometres is dropped, and areas that only touch may be joined or not.
/// </remarks>
public static class Offset
{
    /// <summary>The offset of the inside of an outline.</summary>
    /// <param name="outline">An outline that <c>OutlineCheck</c> finds sound, travelled either way.</param>
    /// <param name="distanceMm">How far: positive outward, negative inward.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    /// <returns>The areas that result, the largest first; none when nothing is left.</returns>
    /// <exception cref="ArgumentOutOfRangeException">The distance is not a finite number.</exception>
    /// <exception cref="OperationCanceledException">Cancellation was asked for.</exception>
    public static ImmutableArray<Region> Of(
        Outline outline,
        double distanceMm,
        CancellationToken cancellation = default
    ) => Of(new Region(outline), distanceMm, cancellation);

    /// <summary>The offset of an area with holes: outward the holes become smaller.</summary>
    /// <inheritdoc cref="Of(Outline, double, CancellationToken)"/>
    /// <param name="region">A region of sound outlines, holes inside the border and apart.</param>
    /// <param name="distanceMm">How far: positive outward, negative inward.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    public static ImmutableArray<Region> Of(
        Region region,
        double distanceMm,
        CancellationToken cancellation = default
    ) => Of([region], distanceMm, cancellation);

    /// <summary>The offset of several areas as one: what grows together becomes one region.</summary>
    /// <inheritdoc cref="Of(Region, double, CancellationToken)"/>
    /// <param name="regions">Regions apart from one another, such as an offset gives.</param>
    /// <param name="distanceMm">How far: positive outward, negative inward.</param>
    /// <param name="cancellation">Ends the work early, by an exception.</param>
    public static ImmutableArray<Region> Of(
        ImmutableArray<Region> regions,
        double distanceMm,
        CancellationToken cancellation = default
    )
    {
        if (!double.IsFinite(distanceMm))
        {
            throw new ArgumentOutOfRangeException(nameof(distanceMm), distanceMm, "The distance must be finite.");
        }

        if (distanceMm == 0 || regions.IsEmpty)
        {
            return regions;
        }

        ImmutableArray<Outline> loops = [.. regions.SelectMany(region => region.Outlines)];
        BoxTree original = new([.. loops.SelectMany(loop => loop.Edges)]);
        OffsetTolerances tolerances = OffsetTolerances.For(original[BoxTree.Root].Grown(Math.Abs(distanceMm)));
        DistanceTest test = new(original, distanceMm, tolerances);
        ImmutableArray<Edge> curves =
        [
            .. Parallels
                .Of(loops, distanceMm, tolerances.JoinMm)
                .Select(curve => test.PartThatMayReachBorder(curve))
                .OfType<Edge>(),
        ];
        return Arrangement.RegionsLeftOf(curves, test, tolerances, cancellation);
    }
}
