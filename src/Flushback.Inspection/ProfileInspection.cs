using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Dxf.Refitting;
using Flushback.Geometry;
using Flushback.Inspection.Checks;
using Flushback.Inspection.Contours;
using Flushback.Inspection.Corners;
using Flushback.Inspection.Cutting;
using Flushback.Inspection.Pins;
using Flushback.Inspection.Stock;

namespace Flushback.Inspection;

/// <summary>The shop's check of a drawing that is to be cut.</summary>
public sealed class ProfileInspection
{
    private readonly DxfReadResult _read;
    private readonly DxfDrawing _drawing;
    private readonly InspectionSettings _settings;
    private readonly CancellationToken _ct;
    private readonly EntityOrder _order;
    private readonly ImmutableArray<string> _layers;
    private readonly List<InspectionFinding> _findings = [];

    private ProfileInspection(DxfReadResult read, DxfDrawing drawing, InspectionSettings settings, CancellationToken ct)
    {
        _read = read;
        _drawing = drawing;
        _settings = settings;
        _ct = ct;
        _order = new EntityOrder(drawing);
        _layers = CutLayers.Of(drawing, settings);
    }

    /// <summary>Holds a drawing against what a shop needs.</summary>
    /// <param name="read">A drawing that was read, and what was said on the way.</param>
    /// <param name="settings">What to hold it against.</param>
    /// <param name="ct">Stops the inspection with <see cref="OperationCanceledException"/>.</param>
    /// <exception cref="ArgumentException">The drawing could not be read: tell the issues of the reading instead.</exception>
    public static InspectionReport Run(DxfReadResult read, InspectionSettings settings, CancellationToken ct = default)
    {
        ArgumentNullException.ThrowIfNull(read);
        ArgumentNullException.ThrowIfNull(settings);
        DxfDrawing drawing =
            read.Drawing ?? throw new ArgumentException("The drawing could not be read.", nameof(read));
        return new ProfileInspection(read, drawing, settings, ct).Run();
    }

    private InspectionReport Run()
    {
        DrawnContours drawn = DrawnContours.Of(_drawing, _layers, _settings.JoinToleranceMm, _order, _ct);
        ImmutableArray<DxfShape> shapes = [.. _layers.SelectMany(_drawing.ShapesOn)];
        Box bounds = drawn.Open.SelectMany(entry => entry.Path.Edges).Aggregate(Box.Empty, With);
        bounds = drawn.Closed.Aggregate(bounds, (box, contour) => box.Including(contour.Outline.Bounds));
        CheckEntities(drawn, shapes, bounds);

        ImmutableArray<CutContour> contours = WithoutCopies(drawn.Closed);
        Crossings crossings = new(contours, _ct);
        NestedContours nested = new(contours, _ct);
        ImmutableArray<MetalPart> parts = MetalPart.Of(nested, crossings.Faulty);
        _findings.AddRange(crossings.Findings);
        _findings.AddRange(NestingFindings.Of(nested));
        _findings.AddRange(PolygonsForArcs.Of(contours, RefitTolerances.Default));
        _findings.AddRange(TinyFeatures.Of(contours, _settings.TinyFeatureMm));
        ImmutableArray<InspectedPart> inspected = Inspected(parts);
        ImmutableArray<CutPath> paths = CheckCutting(parts, UnknownSides.Of(parts, drawn.Open));
        return new InspectionReport
        {
            Unit = _drawing.Unit,
            CutLayers = _layers,
            Parts = inspected,
            OpenContours = [.. drawn.Open.Select(entry => Inspected(entry.Layer, entry.Path))],
            Findings = FindingOrder.Of(_findings, _order),
            Repairs = Repairs(drawn),
            Bounds = bounds,
            CutLengthMm = contours.Sum(contour => contour.Outline.PerimeterMm),
            CutPaths = paths,
        };

        static Box With(Box box, Edge edge) => box.Including(edge.Bounds);
    }

    private void CheckEntities(DrawnContours drawn, ImmutableArray<DxfShape> shapes, Box bounds)
    {
        IEnumerable<DxfIssue> whileReading = _read.Issues.Where(issue =>
            _layers.Contains(issue.Layer ?? "", StringComparer.OrdinalIgnoreCase)
        );
        _findings.AddRange(ChainFindings.Of(whileReading.Concat(drawn.Issues)));
        _findings.AddRange(OpenEnds.Of(drawn.Open, _settings.JoinToleranceMm));
        _findings.AddRange(ShortEdges.Of(shapes, _settings.MicroSegmentMm));
        _findings.AddRange(FittedCurves.Of(shapes));
        _findings.AddRange(ForeignEntities.Of(_read.Issues, _layers));
        _findings.AddRange(UnitCheck.Of(_read.Issues, _drawing.Unit, bounds));
        _findings.AddRange(NothingToCut.In(_drawing, _settings, shapes.IsEmpty));
    }

    private ImmutableArray<CutContour> WithoutCopies(ImmutableArray<CutContour> contours)
    {
        double tolerance = Math.Max(_settings.JoinToleranceMm, CutTolerances.TouchingMm);
        ImmutableArray<(int Original, int Copy)> copies = CopiesAcrossLayers.In(contours, tolerance);
        _findings.AddRange(copies.Select(pair => CopyFindings.Of(contours[pair.Original], contours[pair.Copy])));
        HashSet<int> left = [.. copies.Select(pair => pair.Copy)];
        return [.. contours.Where((_, i) => !left.Contains(i))];
    }

    private ImmutableArray<InspectedPart> Inspected(ImmutableArray<MetalPart> parts)
    {
        FinishedOutlines? finished = _settings.FinishedLayer is { } layer
            ? new FinishedOutlines(_drawing, layer, _settings.JoinToleranceMm, _order, _ct)
            : null;
        if (finished is { IsEmpty: true })
        {
            _findings.Add(StockFindings.NothingFinished(_settings.FinishedLayer!));
        }

        ILookup<int, CutContour>? byPart = finished?.ByPart(parts);
        PinHoles pins = new(parts.SelectMany(part => part.Holes), _settings, _drawing.Unit.IsInchBased());
        return [.. parts.Select((part, i) => Inspected(part, pins, byPart?[i] ?? []))];
    }

    private InspectedPart Inspected(MetalPart part, PinHoles pins, IEnumerable<CutContour> finished)
    {
        (WebMeasure? thinnest, ImmutableArray<InspectionFinding> thin) = Webs.Of(part, _settings.LeastWebMm, _ct);
        (CutContour Hole, PinFit? Fit)[] holes = [.. part.Holes.Select(hole => (hole, pins.FitOf(hole)))];
        StockMeasure? stock = StockFindings.LeastOf(part, finished);
        _findings.AddRange(thin);
        _findings.AddRange(HoleFits.Of(holes, pins, _settings.HolesAreReamed));
        if (stock is not null && StockFindings.Of(part, stock, _settings.GrindingStockMm) is { } tooLittle)
        {
            _findings.Add(tooLittle);
        }

        return new InspectedPart(
            part.Outer.Layer,
            part.Outer.Outline,
            part.Outer.Handles,
            [
                .. holes.Select(pair => new InspectedHole(
                    pair.Hole.Layer,
                    pair.Hole.Outline,
                    pair.Hole.Circle,
                    pair.Hole.Handles
                )
                {
                    Fit = pair.Fit,
                }),
            ]
        )
        {
            AreaMm2 = part.Outer.Outline.AreaMm2 - part.Holes.Sum(hole => hole.Outline.AreaMm2),
            CutLengthMm = part.Contours.Sum(contour => contour.Outline.PerimeterMm),
            ThinnestWeb = thinnest,
            LeastInnerRadius = InnerCorners.LeastOf(part),
            LeastStock = stock,
        };
    }

    private ImmutableArray<CutPath> CheckCutting(ImmutableArray<MetalPart> parts, ImmutableArray<int> unknown)
    {
        if (_settings.CutterDiameterMm is { } cutter)
        {
            _findings.AddRange(CutterFindings.Of(parts, cutter, _ct));
        }

        if (_settings.KerfMm is not { } kerf)
        {
            return [];
        }

        // Where finished outlines are drawn apart, the contours to cut have their stock already.
        double stock = _settings.FinishedLayer is null ? _settings.GrindingStockMm ?? 0 : 0;
        CutPaths paths = new(
            [.. parts.Select((part, i) => (part, i)).Where(pair => !unknown.Contains(pair.i))],
            kerf,
            stock,
            _ct
        );
        _findings.AddRange(unknown.Select(i => UnknownSides.FindingOf(parts[i])));
        _findings.AddRange(paths.Findings);
        return paths.Paths;
    }

    private static OpenContour Inspected(string layer, Dxf.Chaining.OpenPath path) =>
        new(layer, path.Handles, path.Edges[0].Start, path.Edges[^1].End, path.Edges.Sum(edge => edge.LengthMm))
        {
            Edges = path.Edges,
        };

    private ImmutableArray<string> Repairs(DrawnContours drawn) =>
        [
            .. _read
                .Issues.Concat(drawn.Issues)
                .Where(issue => issue.Kind is DxfIssueKind.Repair or DxfIssueKind.Notice)
                .Select(issue => issue.Sentence),
        ];
}
