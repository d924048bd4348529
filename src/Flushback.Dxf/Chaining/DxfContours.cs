using Flushback.Dxf.Drawings;
using Flushback.Geometry;

namespace Flushback.Dxf.Chaining;

/// <summary>Joins the loose entities of a layer into closed contours.</summary>
public static class DxfContours
{
    /// <summary>The closed contours and circles of one layer.</summary>
    /// <param name="drawing">A drawing that was read.</param>
    /// <param name="layer">Name of the layer, compared without regard to case.</param>
    /// <param name="joinToleranceMm">How far apart two ends may lie and still be joined, in millimetres.</param>
    /// <param name="ct">Stops the joining with <see cref="OperationCanceledException"/>.</param>
    /// <remarks>
    /// Entities may lie in any order and direction. Two ends within a nanometre are one point and nothing is said; wider
    /// gaps up to the tolerance are bridged and listed. A layer that is absent, hidden or empty gives no contours and a
    /// notice, not an error: only the caller knows whether it is needed.
    /// </remarks>
    /// <exception cref="ArgumentOutOfRangeException">The tolerance is negative or not finite.</exception>
    public static ChainResult ContoursOf(
        DxfDrawing drawing,
        string layer,
        double joinToleranceMm,
        CancellationToken ct = default
    )
    {
        ArgumentNullException.ThrowIfNull(drawing);
        ArgumentNullException.ThrowIfNull(layer);
        ArgumentOutOfRangeException.ThrowIfNegative(joinToleranceMm);
        if (!double.IsFinite(joinToleranceMm))
        {
            throw new ArgumentOutOfRangeException(nameof(joinToleranceMm), joinToleranceMm, "A tolerance is finite.");
        }

        ChainTolerances tolerances = new(joinToleranceMm);
        List<DxfIssue> issues =
        [
            .. drawing.LayerFaults.Where(fault =>
                string.Equals(fault.Layer, layer, StringComparison.OrdinalIgnoreCase)
            ),
        ];
        List<DxfShape> shapes = Duplicates.Removed([.. drawing.ShapesOn(layer)], tolerances, issues, ct);
        if (shapes.Count == 0 && issues.Count == 0)
        {
            issues.Add(NothingThere(drawing, layer));
        }

        return Chained(shapes, layer, tolerances, issues, ct);
    }

    private static ChainResult Chained(
        List<DxfShape> shapes,
        string layer,
        ChainTolerances tolerances,
        List<DxfIssue> issues,
        CancellationToken ct
    )
    {
        List<(int Line, Contour Contour)> found = [];
        List<(int Line, CircleShape Circle)> circles = [];
        List<(int Line, OpenPath Path)> open = [];
        List<ChainUnit> units = [];
        foreach (DxfShape shape in shapes)
        {
            switch (shape.Geometry)
            {
                case FullCircle full:
                    circles.Add((shape.Line, new CircleShape(full.Circle, [ChainUnit.NameOf(shape)])));
                    break;
                case ClosedOutline closed:
                    found.Add((shape.Line, ContourOf(shape, closed.Outline)));
                    break;
                case OpenChain chain:
                    units.Add(new ChainUnit(shape, chain.Edges));
                    break;
            }
        }

        (units, Joints joints) = Joined(units, tolerances, issues, ct);
        OpenChains openChains = new(units, joints, tolerances);
        foreach (Chain chain in new ChainWalk(units, joints).Chains())
        {
            if (chain.IsClosed)
            {
                int line = units[chain.First.Unit].Shape.Line;
                found.Add((line, chain.ToContour(units, joints)));
                continue;
            }

            open.Add((units[chain.First.Unit].Shape.Line, chain.ToOpenPath(units, joints)));
            if (openChains.Tell(chain) is { } issue)
            {
                issues.Add(issue);
            }
        }

        if (openChains.Rest(layer) is { } rest)
        {
            issues.Add(rest);
        }

        return Sorted(found, circles, tolerances, issues) with
        {
            OpenPaths = [.. open.OrderBy(entry => entry.Line).Select(entry => entry.Path)],
        };
    }

    private static Contour ContourOf(DxfShape shape, Outline outline)
    {
        string name = ChainUnit.NameOf(shape);
        return new Contour(outline, [name]) { EdgeHandles = [.. Enumerable.Repeat(name, outline.Edges.Length)] };
    }

    private static (List<ChainUnit> Units, Joints Joints) Joined(
        List<ChainUnit> units,
        ChainTolerances tolerances,
        List<DxfIssue> issues,
        CancellationToken ct
    )
    {
        List<DxfIssue> onJoining = [];
        Joints joints = Joints.Of(units, tolerances, onJoining, ct);
        if (Overlaps.Removed(units, joints, tolerances, issues, ct) is { } fewer)
        {
            // What was said of the ends before is not true any more.
            units = fewer;
            onJoining.Clear();
            joints = Joints.Of(units, tolerances, onJoining, ct);
        }

        issues.AddRange(onJoining);
        return (units, joints);
    }

    private static ChainResult Sorted(
        List<(int Line, Contour Contour)> found,
        List<(int Line, CircleShape Circle)> circles,
        ChainTolerances tolerances,
        List<DxfIssue> issues
    )
    {
        List<(int Line, Contour Contour)> contours = [];
        foreach ((int line, Contour contour) in found)
        {
            if (CircleRecognition.Of(contour.Outline, tolerances.WidestMm) is { } circle)
            {
                circles.Add((line, new CircleShape(circle, contour.Handles)));
            }
            else
            {
                contours.Add((line, contour));
            }
        }

        return new ChainResult(
            [.. contours.OrderBy(entry => entry.Line).Select(entry => entry.Contour)],
            [.. circles.OrderBy(entry => entry.Line).Select(entry => entry.Circle)],
            [.. issues]
        );
    }

    private static DxfIssue NothingThere(DxfDrawing drawing, string layer)
    {
        string names = string.Join(", ", drawing.Layers.Take(12).Select(known => known.Name));
        return drawing.FindLayer(layer) switch
        {
            null => new DxfIssue(
                DxfIssueCodes.LayerAbsent,
                DxfIssueKind.Notice,
                $"The drawing has no layer {layer}; its layers are {names}.",
                Layer: layer
            ),
            { IsVisible: false } hidden => new DxfIssue(
                DxfIssueCodes.LayerHidden,
                DxfIssueKind.Notice,
                $"Layer {hidden.Name} is {(hidden.IsFrozen ? "frozen" : "off")}, so nothing on it was read; switch it on.",
                Layer: layer
            ),
            _ => new DxfIssue(
                DxfIssueCodes.LayerAbsent,
                DxfIssueKind.Notice,
                $"Layer {layer} holds no lines, arcs or circles; the layers of the drawing are {names}.",
                Layer: layer
            ),
        };
    }
}
