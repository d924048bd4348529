using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Passes.Cuts;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>A face as its first slice finds it: what a cut to given depths takes, without reading the bench.</summary>
internal sealed class FaceCut
{
    // An edge within this of the cut was made by it.
    private const double OnCutMm = 1e-6;

    private readonly Knife _knife;
    private readonly StopReadings _readings;
    private readonly Site _face;

    private FaceCut(Knife knife, StopReadings readings, Site face, DepthPlaces places) =>
        (_knife, _readings, _face, Places) = (knife, readings, face, places);

    /// <summary>Where depths count.</summary>
    public DepthPlaces Places { get; }

    /// <summary>The face; null when the knife has none.</summary>
    public static FaceCut? Of(Knife knife, StopReadings readings, Site face) =>
        DepthPlaces.Of(knife, readings, face) is { } places ? new FaceCut(knife, readings, face, places) : null;

    /// <summary>The face.</summary>
    public Site Face => _face;

    /// <summary>How much deeper the cut lies at a place of the blade, per depth at the front and at the rear place.</summary>
    public (double PerFront, double PerRear) Shares(Point bladeAt, FaceDepths depths)
    {
        CutLine line = Line(depths);
        double share = line.ShareAt(bladeAt);
        return ((1 - share) * Places.Front.Normal.Dot(line.Square), share * Places.Rear.Normal.Dot(line.Square));
    }

    /// <summary>The line of a cut.</summary>
    public CutLine Line(FaceDepths depths) =>
        new(
            Places.Front.At - (Places.Front.Normal * depths.FrontMm),
            Places.Rear.At - (Places.Rear.Normal * depths.RearMm),
            Places.Front.Normal + Places.Rear.Normal
        );

    /// <summary>Area more for each millimetre more at the front and the rear place: the length of the cut, weighed.</summary>
    /// <param name="depths">Depths of the cut.</param>
    /// <param name="beside">A later cut of the face beside it, which takes the end of this one; null without.</param>
    public (double PerFront, double PerRear) AreaGradient(FaceDepths depths, CutLine? beside)
    {
        FlatSlice slice = new(_face) { FrontDepthMm = depths.FrontMm, RearDepthMm = depths.RearMm };
        CutRequest request = new(Workpiece.Of(_knife, Part.Blade), _knife, _readings, CancellationToken.None);
        if (SliceCut.Make(request, slice).After is not { } after)
        {
            return (0, 0);
        }

        CutLine line = Line(depths);
        (double perFront, double perRear) = (0, 0);
        for (int i = 0; i < after.Count; i++)
        {
            Edge edge = after.EdgeAt(i);
            bool onCut =
                after.Sites[i] == _face
                && !edge.IsArc
                && Math.Abs(line.AboveMm(edge.Start)) < OnCutMm
                && Math.Abs(line.AboveMm(edge.End)) < OnCutMm;
            if (onCut)
            {
                (Point start, Point end) = beside is { } other
                    ? other.Under(edge.Start, edge.End)
                    : (edge.Start, edge.End);
                double share = line.ShareAt(start.MidpointTo(end));
                perFront += start.DistanceTo(end) * (1 - share);
                perRear += start.DistanceTo(end) * share;
            }
        }

        return (perFront * Places.Front.Normal.Dot(line.Square), perRear * Places.Rear.Normal.Dot(line.Square));
    }
}

/// <summary>A straight cut through the points at which its depths count.</summary>
internal readonly record struct CutLine
{
    private readonly Point _front;
    private readonly Vector _along;

    /// <summary>Through two points; the metal that goes lies on the side of a direction.</summary>
    public CutLine(Point front, Point rear, Vector outward)
    {
        (_front, _along) = (front, rear - front);
        Vector square = _along.Right.Normalized;
        Square = square.Dot(outward) < 0 ? -square : square;
    }

    /// <summary>Unit direction square to the cut, out of the metal.</summary>
    public Vector Square { get; }

    /// <summary>Where a point lies along the cut: 0 at the front place, 1 at the rear one, beyond them less or more.</summary>
    public double ShareAt(Point at) => (at - _front).Dot(_along) / _along.LengthSquared;

    /// <summary>Height of a point above the cut.</summary>
    public double AboveMm(Point at) => (at - _front).Dot(Square);

    /// <summary>The part of a stretch that lies under the cut; nothing where it is all above.</summary>
    public (Point Start, Point End) Under(Point start, Point end)
    {
        (double a, double b) = (AboveMm(start), AboveMm(end));
        return (a > 0, b > 0) switch
        {
            (true, true) => (start, start),
            (true, false) => (start + ((end - start) * (a / (a - b))), end),
            (false, true) => (start, start + ((end - start) * (a / (a - b)))),
            _ => (start, end),
        };
    }
}
