using Flushback.Geometry;
using Flushback.Geometry.Removal;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>How the tang's outline draws back when a face is cut deeper: exact to first order.</summary>
/// <remarks>
/// <para>
/// An edge on the cut goes with it. Where two edges meet, at a sharp corner or through a round that passes smoothly into
/// both, the corner goes by the vector that brings it down with each of them; a round goes as a whole and keeps its radius
/// (elementary: its centre is a corner of two parallels). An older round that the cut only shortened stays where it is.
/// </para>
/// <para>A relief goes with its cut, and its chord grows and shrinks with the face.</para>
/// </remarks>
internal sealed class OutlineMotion
{
    // Sine of the turn below which a round passes smoothly into a face.
    private const double Smooth = 1e-5;

    // A contact this near to a vertex lies on it.
    private const double VertexMm = 1e-7;

    // Sine between two edges below which they have no corner.
    private const double LeastSine = 1e-4;

    private readonly Workpiece _piece;
    private readonly FaceCut _face;
    private readonly CutLine? _line;
    private readonly double _reliefMm;

    private OutlineMotion(PlanTrial trial, FaceCut face, CutLine? line)
    {
        (_piece, _face, _line) = (Workpiece.Of(trial.Knife, Part.Blade), face, line);
        _reliefMm = trial.ReliefMm;
    }

    /// <summary>The motion by the face of a stop; null where the knife has none.</summary>
    public static OutlineMotion? Of(PlanTrial trial, Stop cut) =>
        trial.FaceOf(cut) is { } face ? new OutlineMotion(trial, face, trial.LineOf(cut)) : null;

    /// <summary>Gap opened along the normal at a contact.</summary>
    /// <param name="at">The contact, in the frame of the blade.</param>
    /// <param name="normal">Its normal out of the tang, in that frame.</param>
    /// <param name="isServed">True for a contact of the stop that the face serves.</param>
    public PerDepth Opened(Point at, Vector normal, bool isServed)
    {
        if (_line is not { } line)
        {
            // The first cut goes through its own contacts; what it does elsewhere the next trial tells.
            return isServed ? _face.Deepened(at, _face.Line(default)) : default;
        }

        int edge = OutlinePlace.Nearest(_piece.Outline, at).EdgeIndex;
        if (_piece.EdgeAt(edge).IsArc && IsRound(edge))
        {
            return MovesWith(edge - 1, edge + 1) ? -RoundMotion(edge).Along(normal) : Unmoved(at, line, isServed);
        }

        foreach (int before in new[] { edge - 1, edge })
        {
            if (at.IsWithin(VertexMm, _piece.EdgeAt(before).End) && !IsSmooth(before))
            {
                return MovesWith(before, before + 1)
                    ? -CornerMotion(before).Along(normal)
                    : Unmoved(at, line, isServed);
            }
        }

        return IsCut(edge) ? _face.Deepened(at, line) * line.Square.Dot(normal) : Unmoved(at, line, isServed);
    }

    /// <summary>Area taken off by each millimetre more: what the outline at the end sweeps over.</summary>
    public PerDepth Area()
    {
        PerDepth area = default;
        if (_line is not { } line)
        {
            return area;
        }

        for (int i = 0; i < _piece.Count; i++)
        {
            Edge edge = _piece.EdgeAt(i);
            if (IsCut(i))
            {
                area += Swept(edge, line);
            }
            else if (edge.IsArc && IsRound(i) && MovesWith(i - 1, i + 1))
            {
                area -= RoundMotion(i).Along(edge.Chord.Right);
            }
            else if (IsRelief(i))
            {
                area += Swept(edge, line) + Stretched(i);
            }
        }

        return area;
    }

    private PerDepth Swept(in Edge edge, in CutLine line) =>
        _face.Deepened(edge.Start.MidpointTo(edge.End), line) * edge.Chord.Length;

    /// <summary>What a longer chord adds to a hollow of the same depth: by the ends of the face, from which it keeps its margins.</summary>
    private PerDepth Stretched(int relief)
    {
        int first = relief;
        int last = relief;
        while (IsOnFace(first - 1))
        {
            first--;
        }

        while (IsOnFace(last + 1))
        {
            last++;
        }

        Vector along = _piece.EdgeAt(relief).Chord.Normalized;
        PerDepth longer = EndMotion(last, last + 1).Along(along) - EndMotion(first - 1, first - 1).Along(along);

        // A segment of sagitta h over the chord c has the area 2 c h / 3 + h^3 / (2 c), to the fourth order in h / c.
        Edge hollow = _piece.EdgeAt(relief);
        double perChord =
            (2 * hollow.SagittaMm / 3) - (Math.Pow(hollow.SagittaMm, 3) / (2 * hollow.Chord.LengthSquared));
        return longer * perChord;
    }

    /// <summary>How an end of the face moves: with the round there, or with the corner.</summary>
    private Motion EndMotion(int joint, int round) =>
        _piece.EdgeAt(round).IsArc && IsRound(round) ? RoundMotion(round) : CornerMotion(joint);

    /// <summary>A cut goes through its own contact wherever that is, but leaves the contacts of other stops.</summary>
    private PerDepth Unmoved(Point at, in CutLine line, bool isServed) => isServed ? _face.Deepened(at, line) : default;

    private Motion RoundMotion(int round)
    {
        Edge arc = _piece.EdgeAt(round);
        return Between(
            arc.OutwardNormalAt(0),
            DrawnBack(round - 1, arc.Start),
            arc.OutwardNormalAt(1),
            DrawnBack(round + 1, arc.End)
        );
    }

    private Motion CornerMotion(int before)
    {
        Point at = _piece.EdgeAt(before).End;
        return Between(
            _piece.EdgeAt(before).OutwardNormalAt(1),
            DrawnBack(before, at),
            _piece.EdgeAt(before + 1).OutwardNormalAt(0),
            DrawnBack(before + 1, at)
        );
    }

    private PerDepth DrawnBack(int edge, Point at) => IsCut(edge) ? _face.Deepened(at, _line!.Value) : default;

    /// <summary>The motion that draws back by given amounts along two normals.</summary>
    private static Motion Between(Vector n, PerDepth backAlongN, Vector m, PerDepth backAlongM)
    {
        double sine = n.Cross(m);
        if (Math.Abs(sine) < LeastSine)
        {
            // No corner to speak of: both go back together.
            return new Motion(n * -backAlongN.Front, n * -backAlongN.Rear);
        }

        Vector Solved(double p, double q) => new((q * n.Y) - (p * m.Y), (p * m.X) - (q * n.X));
        return new Motion(
            Solved(backAlongN.Front, backAlongM.Front) * (1 / sine),
            Solved(backAlongN.Rear, backAlongM.Rear) * (1 / sine)
        );
    }

    private bool MovesWith(int before, int after) => IsCut(before) || IsCut(after);

    private bool IsOnFace(int edge) => _piece.SiteAt(edge) == _face.Face && (IsCut(edge) || IsRelief(edge));

    private bool IsCut(int edge) =>
        _line is { } line && _piece.SiteAt(edge) == _face.Face && line.Holds(_piece.EdgeAt(edge));

    private bool IsRelief(int edge) =>
        _reliefMm > 0
        && _line is { } line
        && _piece.SiteAt(edge) == _face.Face
        && line.HoldsEndsOf(_piece.EdgeAt(edge))
        && Math.Abs(_piece.EdgeAt(edge).SagittaMm - _reliefMm) < VertexMm;

    private bool IsRound(int edge) => IsSmooth(edge - 1) && IsSmooth(edge);

    private bool IsSmooth(int edge) =>
        Math.Abs(_piece.EdgeAt(edge).TangentAt(1).Cross(_piece.EdgeAt(edge + 1).TangentAt(0))) < Smooth;

    /// <summary>How a place moves for each millimetre at the front and at the rear.</summary>
    private readonly record struct Motion(Vector PerFront, Vector PerRear)
    {
        public PerDepth Along(Vector direction) => new(PerFront.Dot(direction), PerRear.Dot(direction));
    }
}
