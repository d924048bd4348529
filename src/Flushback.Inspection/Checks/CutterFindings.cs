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
internal static class CutterFindings
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
            .Concat(
                Bays.NarrowerThan(cutterDiameterMm, [.. parts.Where(part => part.IsSound)], ct)
                    .Select(bay => TooNarrow(bay, cutterDiameterMm))
            );

    private static IEnumerable<InspectionFinding> HollowsOf(BorderLoop loop, double cutterDiameterMm)
    {
        CutContour contour = loop.Contour;
        double radius = cutterDiameterMm / 2;
        string cutter = $"a cutter of {Said.Length(cutterDiameterMm)}";
        if (contour.Circle is { } circle)
        {
            // Seen from the metal a round hole is hollow throughout, a round part nowhere.
            if (!loop.Path.IsCounterClockwise && circle.RadiusMm < radius - CutTolerances.TouchingMm)
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

    private static InspectionFinding TooNarrow(Bay bay, double cutterDiameterMm)
    {
        string where = ReferenceEquals(bay.One, bay.Other)
            ? $"{Sentence.Begin(bay.One.Label)} leaves"
            : $"{Sentence.Begin(bay.One.Label)} and {bay.Other.Label} leave";
        return Finding(
            bay.One,
            Severity.Warning,
            $"{where} only {Said.Length(bay.Width.Mm)} between {Said.At(bay.Width.From)} and {Said.At(bay.Width.To)}, too narrow for a "
                + $"cutter of {Said.Length(cutterDiameterMm)}.",
            "Widen it, or choose a smaller cutter.",
            bay.Width.Middle,
            bay.Width.Mm,
            cutterDiameterMm
        ) with
        {
            Handles = bay.Handles,
        };
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
