using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Geometry.Offsets;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Widths;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Cutting;

/// <summary>Where the middle of the kerf runs: outside the parts, inside their holes.</summary>
internal sealed class CutPaths
{
    private readonly ImmutableArray<CutPath>.Builder _paths = ImmutableArray.CreateBuilder<CutPath>();
    private readonly List<InspectionFinding> _findings = [];
    private readonly double _kerfMm;
    private readonly double _stockMm;

    /// <param name="parts">The parts, each with its place in the report; those whose contours cross are left out.</param>
    /// <param name="kerfMm">Width of the kerf.</param>
    /// <param name="stockMm">What is left on the metal beside it, on the outside and in the holes.</param>
    /// <param name="ct">Ends the work early, by an exception.</param>
    public CutPaths(
        ImmutableArray<(MetalPart Part, int Index)> parts,
        double kerfMm,
        double stockMm,
        CancellationToken ct
    )
    {
        _kerfMm = kerfMm;
        _stockMm = stockMm;
        double distance = (kerfMm / 2) + stockMm;
        (MetalPart Part, int Index)[] sound = [.. parts.Where(entry => entry.Part.IsSound)];
        foreach ((MetalPart part, int i) in sound)
        {
            CutContour outer = part.Outer;
            _paths.Add(new CutPath(outer.Layer, Offset.Of(outer.Outline, distance, ct)[0].Border, IsHole: false, i));
            foreach (CutContour hole in part.Holes)
            {
                AddHole(hole, i, Offset.Of(hole.Outline, -distance, ct));
            }
        }

        foreach (Bay bay in Bays.NarrowerThan(2 * distance, [.. sound.Select(entry => entry.Part)], ct))
        {
            _findings.Add(Swallowed(bay, 2 * distance));
        }
    }

    public ImmutableArray<CutPath> Paths => _paths.ToImmutable();

    public IEnumerable<InspectionFinding> Findings => _findings;

    private string Width =>
        _stockMm > 0
            ? $"a kerf of {Said.Length(_kerfMm)} with {Said.Length(_stockMm)} of stock on both sides"
            : $"a kerf of {Said.Length(_kerfMm)}";

    private void AddHole(CutContour hole, int part, ImmutableArray<Region> inside)
    {
        _paths.AddRange(inside.Select(region => new CutPath(hole.Layer, region.Border, IsHole: true, part)));
        if (!inside.IsEmpty)
        {
            return;
        }

        Box box = hole.Outline.Bounds;
        double size = hole.Circle?.DiameterMm ?? Math.Min(box.WidthMm, box.HeightMm);
        _findings.Add(
            new InspectionFinding(
                InspectionCodes.KerfTooWide,
                Severity.Fault,
                $"{Sentence.Begin(hole.Label)} at {Said.At(box.Centre)} is a hole too small for {Width}: nothing of it is left to cut.",
                "Drill it, or choose a process with a narrower kerf.",
                hole.Handles,
                hole.Layer,
                box.Centre,
                size,
                _kerfMm + (2 * _stockMm),
                "mm"
            )
        );
    }

    private InspectionFinding Swallowed(Bay bay, double limitMm) =>
        new(
            InspectionCodes.KerfTooWide,
            Severity.Warning,
            ReferenceEquals(bay.One, bay.Other)
                ? $"{Sentence.Begin(bay.One.Label)} leaves only {Said.Length(bay.Width.Mm)} between {Said.At(bay.Width.From)} and "
                    + $"{Said.At(bay.Width.To)}, too narrow for {Width}."
                : $"Between {bay.One.Label} and {bay.Other.Label} lie only {Said.Length(bay.Width.Mm)} at {Said.At(bay.Width.Middle)}, "
                    + $"too little for {Width}.",
            "Widen it, or choose a process with a narrower kerf.",
            bay.Handles,
            bay.One.Layer,
            bay.Width.Middle,
            bay.Width.Mm,
            limitMm,
            "mm"
        );
}
