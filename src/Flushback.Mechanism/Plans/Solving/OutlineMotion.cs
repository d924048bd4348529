using Flushback.Geometry;
using Flushback.Geometry.Removal;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>How far the tang's outline draws back at a contact when a face is cut deeper: exact to first order.</summary>
/// <remarks>
/// A contact on the face goes with it. A sharp corner goes along the face beside it; a round that passes smoothly into
/// both faces goes as a whole, its centre as the corner of two parallels (elementary). An older round that the cut only
/// shortened stays where it is.
/// </remarks>
internal sealed class OutlineMotion(PlanTrial trial, PlanAmounts amounts)
{
    // Sine of the turn below which a round passes smoothly into a face.
    private const double Smooth = 1e-5;

    // A contact this near to a vertex lies on it.
    private const double VertexMm = 1e-7;

    private readonly Workpiece _piece = Workpiece.Of(trial.Knife, Part.Blade);

    /// <summary>Gap opened along the normal at a contact, per depth at the front and the rear place of a stop's face.</summary>
    /// <param name="cut">The stop whose face is cut deeper.</param>
    /// <param name="at">The contact, in the frame of the blade.</param>
    /// <param name="normal">Its normal out of the tang, in that frame.</param>
    /// <param name="isServed">True for a contact of the stop that the face serves.</param>
    public (double PerFront, double PerRear) Opened(Stop cut, Point at, Vector normal, bool isServed)
    {
        if (trial.FaceOf(cut) is not { } face)
        {
            return default;
        }

        (int before, int after) = Between(OutlinePlace.Nearest(_piece.Outline, at), at);
        (double perFront, double perRear) = face.Shares(at, amounts.At(cut));
        bool isBefore = IsCut(before, face.Face);
        if (before == after && isBefore)
        {
            return (perFront, perRear);
        }

        if (!isBefore && !IsCut(after, face.Face))
        {
            // A cut goes through its own contact wherever that is, but leaves the contacts of other stops.
            return isServed ? (perFront, perRear) : default;
        }

        Vector arriving = _piece.EdgeAt(before).TangentAt(1);
        Vector leaving = _piece.EdgeAt(after).TangentAt(0);
        (Vector cutAlong, Vector beside) = isBefore ? (arriving, leaving) : (leaving, arriving);
        double share = normal.Dot(beside) / cutAlong.Right.Dot(beside);
        return (perFront * share, perRear * share);
    }

    /// <summary>The two edges that say where a place lies: beside a sharp corner or a round; twice the same on a face.</summary>
    private (int Before, int After) Between(OutlinePlace place, Point at)
    {
        int edge = place.EdgeIndex;
        if (_piece.EdgeAt(edge).IsArc && IsSmooth(edge - 1) && IsSmooth(edge))
        {
            return (_piece.Around(edge - 1), _piece.Around(edge + 1));
        }

        if (at.IsWithin(VertexMm, _piece.EdgeAt(edge).Start) && !IsSmooth(edge - 1))
        {
            return (_piece.Around(edge - 1), edge);
        }

        return at.IsWithin(VertexMm, _piece.EdgeAt(edge).End) && !IsSmooth(edge)
            ? (edge, _piece.Around(edge + 1))
            : (edge, edge);
    }

    private bool IsCut(int edge, Site face) => _piece.SiteAt(edge) == face && !_piece.EdgeAt(edge).IsArc;

    private bool IsSmooth(int edge) =>
        Math.Abs(_piece.EdgeAt(edge).TangentAt(1).Cross(_piece.EdgeAt(edge + 1).TangentAt(0))) < Smooth;
}
