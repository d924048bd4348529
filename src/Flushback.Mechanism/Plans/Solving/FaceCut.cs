using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;
using Flushback.Mechanism.Passes.Cuts;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>A face as its first slice finds it: what a cut to given depths takes, without reading the bench.</summary>
internal sealed class FaceCut
{
    private readonly Knife _knife;
    private readonly StopReadings _readings;

    private FaceCut(Knife knife, StopReadings readings, Site face, DepthPlaces places) =>
        (_knife, _readings, Face, Places) = (knife, readings, face, places);

    /// <summary>The face.</summary>
    public Site Face { get; }

    /// <summary>Where depths count.</summary>
    public DepthPlaces Places { get; }

    /// <summary>The face; null when the knife has none.</summary>
    public static FaceCut? Of(Knife knife, StopReadings readings, Site face) =>
        DepthPlaces.Of(knife, readings, face) is { } places ? new FaceCut(knife, readings, face, places) : null;

    /// <summary>How much deeper a cut lies at a place of the blade, square to itself.</summary>
    public PerDepth Deepened(Point bladeAt, in CutLine line)
    {
        double share = line.ShareAt(bladeAt);
        return new PerDepth(
            (1 - share) * Places.Front.Normal.Dot(line.Square),
            share * Places.Rear.Normal.Dot(line.Square)
        );
    }

    /// <summary>The line of a cut.</summary>
    public CutLine Line(FaceDepths depths) =>
        new(
            Places.Front.At - (Places.Front.Normal * depths.FrontMm),
            Places.Rear.At - (Places.Rear.Normal * depths.RearMm),
            Places.Front.Normal + Places.Rear.Normal
        );

    /// <summary>The depths at which a cut passes through a line.</summary>
    public FaceDepths DepthsTo(in CutLine line) =>
        new(line.DepthMm(Places.Front.At, Places.Front.Normal), line.DepthMm(Places.Rear.At, Places.Rear.Normal));

    /// <summary>Area more for each millimetre more, by the length of the cut alone: without what rounds and reliefs add.</summary>
    /// <param name="depths">Depths of the cut.</param>
    /// <param name="beside">A later cut of the face beside it, which takes the end of this one; null without.</param>
    public PerDepth LengthGradient(FaceDepths depths, CutLine? beside)
    {
        FlatSlice slice = new(Face) { FrontDepthMm = depths.FrontMm, RearDepthMm = depths.RearMm };
        CutRequest request = new(Workpiece.Of(_knife, Part.Blade), _knife, _readings, CancellationToken.None);
        if (SliceCut.Make(request, slice).After is not { } after)
        {
            return default;
        }

        CutLine line = Line(depths);
        PerDepth gradient = default;
        for (int i = 0; i < after.Count; i++)
        {
            Edge edge = after.EdgeAt(i);
            if (after.Sites[i] == Face && line.Holds(edge))
            {
                (Point start, Point end) = beside is { } other
                    ? other.Under(edge.Start, edge.End)
                    : (edge.Start, edge.End);
                gradient += Deepened(start.MidpointTo(end), line) * start.DistanceTo(end);
            }
        }

        return gradient;
    }
}
