using Flushback.Dxf.Reading.Curves;
using Flushback.Dxf.Tags;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>SPLINE, by control points (rational or not) or by fit points; given in drawing coordinates.</summary>
internal sealed class Splines(TagFile file, ReadingLog log, DxfLimits limits, double flatTolerance)
{
    private const int ClosedFlags = 1 | 2;

    private readonly SplineGroups _groups = new(file, log);

    /// <summary>The spline; null when it is faulty, which the log says.</summary>
    public PlaneCurve? Spline(in EntityRecord record)
    {
        if (!_groups.TryTake(record))
        {
            return null;
        }

        if (_groups.Controls.Count > limits.MaxSplinePoints || _groups.FitPoints.Count > limits.MaxSplinePoints)
        {
            return Faulty(record, $"has more than {Wording.Whole(limits.MaxSplinePoints)} points, which is the limit");
        }

        if (
            !_groups.Controls.TrueForAll(point => point.IsFinite)
            || !_groups.FitPoints.TrueForAll(point => point.IsFinite)
        )
        {
            return Faulty(record, "has a point without x: draw it again");
        }

        if (_groups.Heights.Count > 0 && _groups.Heights.Max() - _groups.Heights.Min() > flatTolerance)
        {
            log.Fault(
                record,
                DxfIssueCodes.EntityNotFlat,
                "has points at different heights (z): flatten the drawing to one plane"
            );
            return null;
        }

        return _groups.Controls.Count > 0 ? ByControls(record) : ByFitPoints(record);
    }

    private BezierPath? ByControls(in EntityRecord record)
    {
        if (_groups.Degree < 1 || _groups.Degree > limits.MaxSplineDegree)
        {
            return Faulty(
                record,
                $"has degree {Wording.Whole(_groups.Degree)}, and 1 to {Wording.Whole(limits.MaxSplineDegree)} are read"
            );
        }

        if (
            _groups.Controls.Count <= _groups.Degree
            || _groups.Knots.Count != _groups.Controls.Count + _groups.Degree + 1
        )
        {
            return Faulty(
                record,
                $"has {Wording.Whole(_groups.Knots.Count)} knots for {Wording.Whole(_groups.Controls.Count)} control points of degree "
                    + $"{Wording.Whole(_groups.Degree)}, which do not belong together: draw it again"
            );
        }

        if (
            _groups.Weights.Count > 0
            && (_groups.Weights.Count != _groups.Controls.Count || _groups.Weights.Exists(weight => weight <= 0))
        )
        {
            return Faulty(record, "has weights that are missing or not above zero: draw it again");
        }

        for (int i = 1; i < _groups.Knots.Count; i++)
        {
            if (_groups.Knots[i] < _groups.Knots[i - 1])
            {
                return Faulty(record, "has knots that do not rise: draw it again");
            }
        }

        ControlPoint[] weighted = new ControlPoint[_groups.Controls.Count];
        for (int i = 0; i < weighted.Length; i++)
        {
            weighted[i] = new ControlPoint(_groups.Controls[i], _groups.Weights.Count > 0 ? _groups.Weights[i] : 1);
        }

        BezierPath path = new([.. SplineSpans.Of(_groups.Degree, [.. _groups.Knots], weighted)]);
        if (path.Pieces.Length == 0)
        {
            return Faulty(record, "has knots that are all one: draw it again");
        }

        // A knot repeated more often than the degree lets the curve fall apart there.
        for (int i = 1; i < path.Pieces.Length; i++)
        {
            if (!path.Pieces[i - 1].At(1).IsWithin(flatTolerance, path.Pieces[i].At(0)))
            {
                return Faulty(record, "falls apart at a knot that is repeated too often: draw its parts one by one");
            }
        }

        return path;
    }

    private BezierPath? ByFitPoints(in EntityRecord record)
    {
        bool isClosed = (_groups.Flags & ClosedFlags) != 0;
        List<Point> distinct = [];
        foreach (Point point in _groups.FitPoints)
        {
            if (distinct.Count == 0 || distinct[^1] != point)
            {
                distinct.Add(point);
            }
        }

        if (isClosed && distinct.Count > 1 && distinct[^1] == distinct[0])
        {
            distinct.RemoveAt(distinct.Count - 1);
        }

        if (distinct.Count < (isClosed ? 3 : 2))
        {
            return Faulty(record, "has neither control points nor enough fit points: delete it or draw it again");
        }

        if (!isClosed && (_groups.Start.Length == 0 || _groups.End.Length == 0))
        {
            log.Count(
                record,
                DxfIssueCodes.CurveFitted,
                "is given by fit points without end directions, for which programs differ; it was drawn with free ends",
                "are given by fit points without end directions, for which programs differ; they were drawn with free ends"
            );
        }

        return new BezierPath([
            .. FitPoints.Through(distinct, isClosed, GivenOrNull(_groups.Start), GivenOrNull(_groups.End)),
        ]);
    }

    private static Vector? GivenOrNull(Vector direction) => direction.Length > 0 ? direction : null;

    private BezierPath? Faulty(in EntityRecord record, string what)
    {
        log.Fault(record, DxfIssueCodes.EntityInvalid, what);
        return null;
    }
}
