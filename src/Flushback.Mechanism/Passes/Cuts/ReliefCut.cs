using Flushback.Geometry;
using Flushback.Geometry.Removal;
using Flushback.Mechanism.Findings;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Passes.Cuts;

/// <summary>Hollows the middle of a face by one arc.</summary>
internal static class ReliefCut
{
    private const string Relieved =
        "open flat, half-stop face and closed face of the blade and underside of the spring";

    /// <summary>Makes the cut.</summary>
    public static (Workpiece? After, PassProblem? Problem) Make(CutRequest request, ReliefArc pass)
    {
        Workpiece piece = request.Piece;
        if (!IsRelieved(pass.Face) || FaceOf(request, pass.Face) is not { } face)
        {
            return (null, CutProblems.UnknownFace(piece, pass.Face, Relieved));
        }

        bool frontIsFirst = pass.Face.Part == Part.Blade;
        double startMm = frontIsFirst ? pass.FrontMarginMm : pass.RearMarginMm;
        double endMm = frontIsFirst ? pass.RearMarginMm : pass.FrontMarginMm;
        double length = face.LengthMm;
        Point middle = face.At(length / 2).On(piece.Outline);
        if (startMm + endMm >= length)
        {
            return (
                null,
                new PassProblem(
                    PassReasons.ToolDoesNotFit,
                    $"Margins of {Said.Length(startMm)} and {Said.Length(endMm)} leave nothing to relieve of the {pass.Face.Name}, which is {Said.Length(length)} long; make them smaller.",
                    middle
                )
            );
        }

        OutlinePlace from = face.At(startMm);
        OutlinePlace to = face.At(length - endMm);
        Point start = from.On(piece.Outline);
        Point end = to.On(piece.Outline);
        if (pass.DepthMm > start.DistanceTo(end) / 2)
        {
            return (
                null,
                new PassProblem(
                    PassReasons.ToolDoesNotFit,
                    $"A relief {Said.Length(pass.DepthMm)} deep and {Said.Length(start.DistanceTo(end))} long is no shallow hollow of the {pass.Face.Name}; make it less deep.",
                    middle
                )
            );
        }

        (CutOutline? cut, CutFailure? failure) = Slice.Of(
            piece.Outline,
            CuttingCurve.Hollow(start, end, pass.DepthMm),
            from,
            to,
            SliceReach.Within
        );
        return cut is null ? (null, CutProblems.Of(failure, pass.Face, middle)) : (piece.After(cut, pass.Face), null);
    }

    private static bool IsRelieved(Site face) =>
        face.Spring == SpringFace.Underside
        || face.Blade is BladeFace.OpenFlat or BladeFace.HalfStopFace or BladeFace.ClosedFace;

    private static FaceLength? FaceOf(CutRequest request, Site face)
    {
        if (face.Spring != SpringFace.Underside)
        {
            return request.Piece.RunOf(face) is { } run
                ? new FaceLength(
                    request.Piece,
                    new OutlinePlace(request.Piece.Around(run.First), 0),
                    new OutlinePlace(request.Piece.Around(run.Last), 1)
                )
                : null;
        }

        return DepthPlaces.Stretch.Of(request.Piece, request.Knife, request.Readings, face) is { } stretch
            ? new FaceLength(request.Piece, stretch.From, stretch.To)
            : null;
    }

    /// <summary>A stretch of an outline measured along it.</summary>
    private sealed class FaceLength
    {
        private readonly Workpiece _piece;
        private readonly OutlinePlace _from;
        private readonly int _count;
        private readonly double _end;

        public FaceLength(Workpiece piece, OutlinePlace from, OutlinePlace to)
        {
            (_piece, _from, _end) = (piece, from, to.Fraction);
            _count = piece.Around(to.EdgeIndex - from.EdgeIndex) + 1;
            LengthMm = Enumerable.Range(0, _count).Sum(PieceMm);
        }

        public double LengthMm { get; }

        /// <summary>The place so far along.</summary>
        public OutlinePlace At(double alongMm)
        {
            double left = alongMm;
            for (int i = 0; i < _count - 1; i++)
            {
                if (left <= PieceMm(i))
                {
                    return Place(i, left);
                }

                left -= PieceMm(i);
            }

            return Place(_count - 1, left);
        }

        private OutlinePlace Place(int step, double alongMm)
        {
            double start = step == 0 ? _from.Fraction : 0;
            double fraction = start + (alongMm / _piece.EdgeAt(_from.EdgeIndex + step).LengthMm);
            return new OutlinePlace(_piece.Around(_from.EdgeIndex + step), Math.Clamp(fraction, 0, 1));
        }

        private double PieceMm(int step)
        {
            double start = step == 0 ? _from.Fraction : 0;
            double end = step == _count - 1 ? _end : 1;
            return (end - start) * _piece.EdgeAt(_from.EdgeIndex + step).LengthMm;
        }
    }
}
