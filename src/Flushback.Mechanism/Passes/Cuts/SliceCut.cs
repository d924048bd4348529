using Flushback.Geometry;
using Flushback.Geometry.Removal;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes.Cuts;

/// <summary>Takes a face down through two points, straight or with a wheel.</summary>
internal static class SliceCut
{
    private const string Sliced =
        "open flat, shoulder, half-stop face and closed face of the blade, underside and end face of the spring";

    // The neighbours of an inner round pass into it without a corner: sine of the turn.
    private const double Smooth = 1e-6;

    // A nose is lowered by about the depth asked for everywhere: much more means that the cut has left it.
    private const double MostBehindMm = 0.1;

    // An outline that turns outward by less goes straight on, by rounding: sine of the turn.
    private const double TurnsOutward = 1e-3;

    /// <summary>Makes the cut.</summary>
    public static (Workpiece? After, PassProblem? Problem) Make(CutRequest request, SlicePass pass)
    {
        Workpiece piece = request.Piece;
        if (DepthPlaces.Stretch.Of(piece, request.Knife, request.Readings, pass.Site) is not { } stretch)
        {
            return (null, CutProblems.UnknownFace(piece, pass.Site, Sliced));
        }

        (double firstMm, double lastMm) = stretch.FrontIsFirst
            ? (pass.FrontDepthMm, pass.RearDepthMm)
            : (pass.RearDepthMm, pass.FrontDepthMm);
        Point from = stretch.First.At - (stretch.First.Normal * firstMm);
        Point to = stretch.Last.At - (stretch.Last.Normal * lastMm);
        if (pass is not WheelSlice wheel)
        {
            CuttingCurve flat = CuttingCurve.Straight(from, to);
            (Workpiece? after, PassProblem? problem) = Through(piece, stretch, flat, pass.Site);
            bool runsOn =
                pass.Site.Spring == SpringFace.Underside
                && after is not null
                && after.Removed.Max(region => DeepestMm(region, flat))
                    > MostBehindMm + (2 * Math.Max(firstMm, lastMm));
            return runsOn ? (null, HangsLower(stretch)) : (after, problem);
        }

        double least = from.DistanceTo(to) / 2;
        if (wheel.WheelRadiusMm < least)
        {
            return (
                null,
                new PassProblem(
                    PassReasons.ToolDoesNotFit,
                    $"A wheel of {Said.Length(wheel.WheelRadiusMm)} radius cannot reach both contacts of the {pass.Site.Name}; take one of at least {Said.Length(least)}.",
                    from.MidpointTo(to)
                )
            );
        }

        return Through(piece, stretch, CuttingCurve.Wheel(from, to, wheel.WheelRadiusMm), pass.Site);
    }

    private static double DeepestMm(Outline region, CuttingCurve curve) =>
        region.Edges.Max(edge => curve.DepthMm(edge.Start));

    private static PassProblem HangsLower(DepthPlaces.Stretch stretch) =>
        new(
            PassReasons.ToolDoesNotFit,
            "Behind the nose the underside hangs lower than the cut, which would run on into it; make the pass less deep, or relieve the underside behind the nose in the drawing.",
            stretch.First.At
        );

    /// <summary>Cuts a face along a curve from end to end.</summary>
    public static (Workpiece? After, PassProblem? Problem) Through(
        Workpiece piece,
        DepthPlaces.Stretch stretch,
        CuttingCurve curve,
        Site face
    )
    {
        (int? before, int? after) = WallsOf(piece, face, stretch);
        if (curve.Carrier.IsArc && Reaches(piece, before ?? after, curve))
        {
            return (
                null,
                new PassProblem(
                    PassReasons.ToolDoesNotFit,
                    $"The wheel does not fit beside the {face.Name}: it would cut into the {piece.Sites[(before ?? after)!.Value].Name}; take the {face.Name} down flat, or with another tool.",
                    stretch.First.At
                )
            );
        }

        (CutOutline? cut, CutFailure? failure) = Slice.Of(
            piece.Outline,
            curve,
            stretch.From,
            stretch.To,
            new SliceReach(GoesOn: true, before, after)
        );
        return cut is null
            ? (null, CutProblems.Of(failure, face, stretch.First.At))
            : InnerRoundKept(piece, piece.After(cut, face), face);
    }

    /// <summary>
    /// Where the outline turns outward the tool runs against what stands there: in the notch the face on the other side of
    /// the inner corner, behind the nose a belly that hangs lower than it.
    /// </summary>
    private static (int? Before, int? After) WallsOf(Workpiece piece, Site face, DepthPlaces.Stretch stretch) =>
        face switch
        {
            { Blade: BladeFace.OpenFlat } when piece.RunOf(Site.On(BladeFace.Shoulder)) is { } run => (
                piece.Around(run.Last),
                null
            ),
            { Blade: BladeFace.Shoulder } when piece.RunOf(Site.On(BladeFace.OpenFlat)) is { } run => (
                null,
                piece.Around(run.First)
            ),
            { Spring: SpringFace.Underside } => (BellyBehind(piece, stretch.From.EdgeIndex), null),
            _ => (null, null),
        };

    private static int? BellyBehind(Workpiece piece, int edge)
    {
        for (int i = edge; i > edge - piece.Count && piece.SiteAt(i - 1).Spring == SpringFace.Underside; i--)
        {
            if (piece.EdgeAt(i - 1).TangentAt(1).Cross(piece.EdgeAt(i).TangentAt(0)) < -TurnsOutward)
            {
                return piece.Around(i - 1);
            }
        }

        return null;
    }

    private static bool Reaches(Workpiece piece, int? wall, CuttingCurve curve)
    {
        if (wall is not { } index)
        {
            return false;
        }

        Edge edge = piece.Outline.Edges[index];
        return Math.Max(curve.DepthMm(edge.Start), curve.DepthMm(edge.PointAt(0.5))) > 0;
    }

    /// <summary>A round in the notch's inner corner goes down with the face and keeps its radius.</summary>
    private static (Workpiece? After, PassProblem? Problem) InnerRoundKept(Workpiece before, Workpiece after, Site face)
    {
        Site corner = Site.On(BladeFace.NotchCorner);
        bool isBeside = face.Blade is BladeFace.OpenFlat or BladeFace.Shoulder;
        if (!isBeside || before.RunOf(corner) is not { Count: 1 } run || after.RunOf(corner) is not null)
        {
            return (after, null);
        }

        Edge round = before.EdgeAt(run.First);
        bool isRound = IsSmooth(before.EdgeAt(run.First - 1), round) && IsSmooth(round, before.EdgeAt(run.First + 1));
        int wall = Enumerable
            .Range(0, after.Count)
            .FirstOrDefault(
                i => after.Sites[i].Blade == BladeFace.Shoulder && after.SiteAt(i + 1).Blade == BladeFace.OpenFlat,
                -1
            );
        if (!isRound || !round.IsArc || wall < 0)
        {
            return (after, null);
        }

        // The new round lies inside the old outline, as the two faces do: filling the corner up to it adds no metal.
        (CutOutline? cut, _) = Fillet.Of(after.Outline, wall, after.Around(wall + 1), round.RadiusMm, convex: false);
        return cut is null ? (after, null) : (after.After(cut, corner), null);
    }

    private static bool IsSmooth(Edge before, Edge after) =>
        Math.Abs(before.TangentAt(1).Cross(after.TangentAt(0))) < Smooth;
}
