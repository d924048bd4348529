using System.Collections.Immutable;

namespace Flushback.Geometry.Polar;

/// <summary>An outline made ready to be looked at in polar coordinates from a centre that may move: see <see cref="Split"/>.</summary>
/// <remarks>Immutable. Splitting writes into the caller's list and allocates nothing once that list has grown.</remarks>
public sealed class PolarOutline
{
    private readonly ImmutableArray<Form> _forms;

    /// <summary>Prepares a counter-clockwise outline.</summary>
    public PolarOutline(Outline outline)
    {
        Outline = outline.CounterClockwise();
        _forms = [.. Outline.Edges.Select(edge => new Form(edge))];
    }

    /// <summary>The outline, counter-clockwise.</summary>
    public Outline Outline { get; }

    /// <summary>Adds the radial pieces of all edges that come within a radius of a centre.</summary>
    /// <param name="centre">Where radii and angles are taken from, in the outline's frame.</param>
    /// <param name="turn">Added to every polar angle: the turn of the outline's frame.</param>
    /// <param name="reachMm">Pieces wholly beyond this radius are left out.</param>
    /// <param name="pieces">Where the pieces go, in order of travel.</param>
    public void Split(Point centre, Angle turn, double reachMm, List<RadialPiece> pieces)
    {
        double reach2 = reachMm * reachMm;
        double turned = turn.Signed.Radians;
        Vector start = _forms[0].Start - centre;
        Vector first = start;
        double start2 = start.LengthSquared;
        double first2 = start2;
        RadialEnd? known = null;
        for (int i = 0; i < _forms.Length; i++)
        {
            bool last = i == _forms.Length - 1;
            Vector end = last ? first : _forms[i + 1].Start - centre;
            double end2 = last ? first2 : end.LengthSquared;
            Ends ends = new(start, end, start2, end2, i, last ? 0 : i + 1, known);
            known = _forms[i].Split(ends, centre, turned, reach2, pieces);
            start = end;
            start2 = end2;
        }
    }

    /// <summary>Both ends of an edge as seen from the centre; the start in polar coordinates when the edge before has found it.</summary>
    private readonly record struct Ends(
        Vector Start,
        Vector End,
        double Start2,
        double End2,
        int First,
        int Second,
        RadialEnd? Known
    )
    {
        public RadialEnd PolarStart(double turn) => Known ?? EndAt(Start, Start2, turn, First);

        public RadialEnd PolarEnd(double turn) => EndAt(End, End2, turn, Second);

        private static RadialEnd EndAt(Vector fromCentre, double squared, double turn, int vertex) =>
            new(Math.Sqrt(squared), RadialPiece.Wrapped(Math.Atan2(fromCentre.Y, fromCentre.X) + turn), vertex);
    }

    /// <summary>An edge with everything that does not depend on the centre.</summary>
    private readonly struct Form(Edge edge)
    {
        private readonly Edge _edge = edge;
        private readonly bool _isArc = edge.IsArc;
        private readonly Vector _tangent = edge.Chord.Normalized;
        private readonly double _normalDirection = edge.Chord.Right.Direction.Radians;
        private readonly Point _arcCentre = edge.IsArc ? edge.Centre : default;
        private readonly double _radius = edge.IsArc ? edge.RadiusMm : 0;

        public Point Start => _edge.Start;

        /// <summary>Adds the edge's pieces and gives its end; null where the edge stays beyond reach.</summary>
        public RadialEnd? Split(in Ends ends, Point centre, double turn, double reach2, List<RadialPiece> pieces) =>
            _isArc ? SplitArc(ends, centre, turn, reach2, pieces) : SplitLine(ends, turn, reach2, pieces);

        private RadialEnd? SplitLine(in Ends ends, double turn, double reach2, List<RadialPiece> pieces)
        {
            double alongStart = ends.Start.Dot(_tangent);
            double alongEnd = ends.End.Dot(_tangent);
            double offset = ends.Start.Dot(_tangent.Right);
            bool passesFoot = alongStart < 0 && alongEnd > 0;
            double nearest2 = passesFoot ? offset * offset : Math.Min(ends.Start2, ends.End2);
            if (nearest2 > reach2)
            {
                return null;
            }

            RadialEnd start = ends.PolarStart(turn);
            RadialEnd end = ends.PolarEnd(turn);
            double axis = RadialPiece.Wrapped(_normalDirection + turn);
            if (!passesFoot)
            {
                Add(pieces, new LinePiece(ends.First, offset, axis), start, end);
                return end;
            }

            double footAngle = offset >= 0 ? axis : RadialPiece.Wrapped(axis + Math.PI);
            RadialEnd foot = new(Math.Abs(offset), footAngle, -1);
            Add(pieces, new LinePiece(ends.First, offset, axis), start, foot);
            Add(pieces, new LinePiece(ends.First, offset, axis), foot, end);
            return end;
        }

        private static void Add(List<RadialPiece> pieces, LinePiece line, RadialEnd from, RadialEnd to)
        {
            bool outward = to.RadiusMm > from.RadiusMm;
            if (from.RadiusMm == to.RadiusMm)
            {
                return;
            }

            (RadialEnd inner, RadialEnd outer) = outward ? (from, to) : (to, from);
            // Travel is counter-clockwise of the outward normal, so the outward half lies on its positive side.
            pieces.Add(
                new RadialPiece(
                    pieces.Count,
                    line.Edge,
                    false,
                    line.Offset,
                    0,
                    line.Axis,
                    outward ? 1 : -1,
                    inner,
                    outer,
                    outward
                )
            );
        }

        private readonly record struct LinePiece(int Edge, double Offset, double Axis);

        private RadialEnd? SplitArc(in Ends ends, Point centre, double turn, double reach2, List<RadialPiece> pieces)
        {
            Vector toCentre = _arcCentre - centre;
            double distance = toCentre.Length;
            double nearest = Math.Abs(distance - _radius);
            if (nearest * nearest > reach2 || distance == 0)
            {
                return null;
            }

            // Where the distance from the centre turns back: straight towards it and straight away from it.
            bool spansNear = Spans(-toCentre, distance);
            bool spansFar = Spans(toCentre, distance);
            if (!spansNear && Math.Min(ends.Start2, ends.End2) > reach2)
            {
                return null;
            }

            RadialEnd start = ends.PolarStart(turn);
            RadialEnd end = ends.PolarEnd(turn);
            double axis = RadialPiece.Wrapped(toCentre.Direction.Radians + turn);
            double nearAngle = distance >= _radius ? axis : RadialPiece.Wrapped(axis + Math.PI);
            RadialEnd near = new(nearest, nearAngle, -1);
            RadialEnd far = new(distance + _radius, axis, -1);
            ArcPiece arc = new(ends.First, distance, _edge.Bulge > 0 ? _radius : -_radius, axis);

            if (spansNear && spansFar)
            {
                bool nearFirst = _edge.FractionAtDirection(-toCentre) < _edge.FractionAtDirection(toCentre);
                (RadialEnd one, RadialEnd two) = nearFirst ? (near, far) : (far, near);
                Add(pieces, arc, start, one);
                Add(pieces, arc, one, two);
                Add(pieces, arc, two, end);
            }
            else if (spansNear || spansFar)
            {
                RadialEnd turnBack = spansNear ? near : far;
                Add(pieces, arc, start, turnBack);
                Add(pieces, arc, turnBack, end);
            }
            else
            {
                Add(pieces, arc, start, end);
            }

            return end;
        }

        // The same as Edge.SpansDirection, from what is known already: this is asked at every blade angle.
        private bool Spans(Vector fromCentre, double length)
        {
            Vector fromStart = _arcCentre + (fromCentre * (_radius / length)) - _edge.Start;
            double side = _tangent.Cross(fromStart);
            return _edge.Bulge > 0 ? side <= 0 : side >= 0;
        }

        private static void Add(List<RadialPiece> pieces, ArcPiece arc, RadialEnd from, RadialEnd to)
        {
            if (from.RadiusMm == to.RadiusMm)
            {
                return;
            }

            bool outward = to.RadiusMm > from.RadiusMm;
            (RadialEnd inner, RadialEnd outer) = outward ? (from, to) : (to, from);
            // On a convex arc, travelled counter-clockwise about its centre, the radius grows while the piece lies
            // clockwise of the line of centres, and the other way in a hollow.
            double side = outward == arc.SignedRadius > 0 ? -1 : 1;
            pieces.Add(
                new RadialPiece(
                    pieces.Count,
                    arc.Edge,
                    true,
                    arc.Distance,
                    arc.SignedRadius,
                    arc.Axis,
                    side,
                    inner,
                    outer,
                    outward
                )
            );
        }

        private readonly record struct ArcPiece(int Edge, double Distance, double SignedRadius, double Axis);
    }
}
