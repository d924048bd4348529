using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Corners;
using Flushback.Inspection.Widths;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Places that a round cutter, wire or jet cannot reach into: corners, hollow arcs, bays and holes.</summary>
/// <remarks>
/// The cutter's disc runs outside the metal. It misses a place either because the border bends more tightly than the disc,
/// or because the way in is narrower than the disc; the latter are the narrow places of what is not metal.
/// </remarks>
internal static class CutterReach
{
    /// <summary>Metal left in a corner that no one notices: a fifth of what a wire cuts to (common practice, no source).</summary>
    private const double UnnoticedMm = 0.002;

    public static IEnumerable<InspectionFinding> Of(
        ImmutableArray<MetalPart> parts,
        double cutterDiameterMm,
        CancellationToken ct
    ) =>
        parts
            .SelectMany(part => part.Loops)
            .SelectMany(loop => HollowsOf(loop, cutterDiameterMm))
            .Concat(Bays([.. parts.Where(part => part.IsSound)], cutterDiameterMm, ct));

    private static IEnumerable<InspectionFinding> HollowsOf(BorderLoop loop, double cutterDiameterMm)
    {
        CutContour contour = loop.Contour;
        double radius = cutterDiameterMm / 2;
        string cutter = $"a cutter of {Said.Length(cutterDiameterMm)}";
        if (contour.Circle is { } circle)
        {
            // Seen from the metal a round hole is hollow throughout, a round part nowhere.
            if (!loop.Path.IsCounterClockwise && circle.RadiusMm < radius)
            {
                yield return Finding(
                    contour,
                    Severity.Note,
                    $"{Sentence.Begin(contour.Label)} at {Said.At(circle.Centre)} is a hole of {Said.Length(circle.DiameterMm)}, too small for {cutter}.",
                    "Drill it, or choose a smaller cutter.",
                    circle.Centre,
                    circle.RadiusMm,
                    radius
                );
            }

            yield break;
        }

        foreach (HollowRun run in Hollows.Of(loop.Path, radius).Where(run => run.LeftByMm(radius) > UnnoticedMm))
        {
            Bend bend = run.Tightest;
            string what = bend.IsCorner ? "a sharp inner corner" : $"an inner radius of {Said.Length(bend.RadiusMm)}";
            yield return Finding(
                contour,
                Severity.Warning,
                $"{Sentence.Begin(contour.Label)} has {what} at {Said.At(bend.At)}, where {cutter} leaves a radius of {Said.Length(radius)}.",
                $"Draw a radius of at least {Said.Length(radius)} there, or a relief, or file the corner by hand.",
                bend.At,
                bend.RadiusMm,
                radius
            ) with
            {
                Handles = Hollows.HandlesOf(bend, loop),
            };
        }
    }

    private static IEnumerable<InspectionFinding> Bays(
        ImmutableArray<MetalPart> parts,
        double cutterDiameterMm,
        CancellationToken ct
    )
    {
        Border air = new(parts.SelectMany(part => part.Loops).Select(loop => loop.Reversed()));
        ImmutableArray<Width> narrow = WidthSearch.Below(air, cutterDiameterMm, ct);
        foreach (Width bay in NarrowPlaces.OnceEach(narrow, cutterDiameterMm))
        {
            CutContour one = air.ContourOf(bay.FromEdge);
            CutContour other = air.ContourOf(bay.ToEdge);
            string where = ReferenceEquals(one, other)
                ? $"{Sentence.Begin(one.Label)} leaves"
                : $"{Sentence.Begin(one.Label)} and {other.Label} leave";
            yield return Finding(
                one,
                Severity.Warning,
                $"{where} only {Said.Length(bay.Mm)} between {Said.At(bay.From)} and {Said.At(bay.To)}, too narrow for a cutter of "
                    + $"{Said.Length(cutterDiameterMm)}.",
                "Widen it, or choose a smaller cutter.",
                bay.Middle,
                bay.Mm,
                cutterDiameterMm
            ) with
            {
                Handles = air.HandlesOf(bay),
            };
        }
    }

    private static InspectionFinding Finding(
        CutContour contour,
        Severity severity,
        string message,
        string advice,
        Point at,
        double value,
        double limit
    ) =>
        new(
            InspectionCodes.InnerRadius,
            severity,
            message,
            advice,
            contour.Handles,
            contour.Layer,
            at,
            value,
            limit,
            "mm"
        );
}
