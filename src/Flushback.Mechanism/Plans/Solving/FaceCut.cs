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

    /// <summary>How much deeper the cut lies at a place of the blade, per depth at the front and at the rear place.</summary>
    public (double PerFront, double PerRear) Shares(Point bladeAt)
    {
        Vector along = Places.Rear.At - Places.Front.At;
        double share = Math.Clamp((bladeAt - Places.Front.At).Dot(along) / along.LengthSquared, 0, 1);
        return (1 - share, share);
    }

    /// <summary>Area more for each millimetre more at the front and the rear place: the length of the cut, weighed.</summary>
    public (double PerFront, double PerRear) AreaGradient(FaceDepths depths)
    {
        FlatSlice slice = new(_face) { FrontDepthMm = depths.FrontMm, RearDepthMm = depths.RearMm };
        CutRequest request = new(Workpiece.Of(_knife, Part.Blade), _knife, _readings, CancellationToken.None);
        if (SliceCut.Make(request, slice).After is not { } after)
        {
            return (0, 0);
        }

        Point front = Places.Front.At - (Places.Front.Normal * depths.FrontMm);
        Point rear = Places.Rear.At - (Places.Rear.Normal * depths.RearMm);
        Vector along = rear - front;
        Vector square = along.Normalized.Right;
        (double perFront, double perRear) = (0, 0);
        for (int i = 0; i < after.Count; i++)
        {
            Edge edge = after.EdgeAt(i);
            bool onCut =
                after.Sites[i] == _face
                && !edge.IsArc
                && Math.Abs((edge.Start - front).Dot(square)) < OnCutMm
                && Math.Abs((edge.End - front).Dot(square)) < OnCutMm;
            if (onCut)
            {
                double share = (edge.Start.MidpointTo(edge.End) - front).Dot(along) / along.LengthSquared;
                perFront += edge.LengthMm * (1 - share);
                perRear += edge.LengthMm * share;
            }
        }

        return (
            perFront * Math.Abs(Places.Front.Normal.Dot(square)),
            perRear * Math.Abs(Places.Rear.Normal.Dot(square))
        );
    }
}
