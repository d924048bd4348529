using System.Collections.Immutable;
using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Widths;

/// <summary>A way into or past the metal that something wide cannot pass.</summary>
/// <param name="Width">Where and how wide.</param>
/// <param name="One">The contour on one side.</param>
/// <param name="Other">The contour on the other side; the same for a bay.</param>
/// <param name="Handles">Handles (or places) of the entities at both sides.</param>
internal sealed record Bay(Width Width, CutContour One, CutContour Other, ImmutableArray<string> Handles);

/// <summary>Finds what is narrow outside the metal: bays, slots, and the air between two parts.</summary>
internal static class Bays
{
    /// <summary>What is narrower than a width, the narrowest first.</summary>
    public static IEnumerable<Bay> NarrowerThan(double widthMm, ImmutableArray<MetalPart> parts, CancellationToken ct)
    {
        Border air = new(parts.SelectMany(part => part.Loops).Select(loop => loop.Reversed()));
        return NarrowPlaces
            .OnceEach(WidthSearch.Below(air, widthMm, ct), widthMm)
            .Select(bay => new Bay(bay, air.ContourOf(bay.FromEdge), air.ContourOf(bay.ToEdge), air.HandlesOf(bay)));
    }
}
