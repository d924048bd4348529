using Flushback.Dxf.Reading.Curves;
using Flushback.Dxf.Tags;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>SPLINE, by control points (rational or not) or by fit points; given in drawing coordinates.</summary>
internal sealed class Splines(TagFile file, ReadingLog log, DxfLimits limits, double flatTolerance)
{
    private const int ClosedFlags = 1 | 2;

    private readonly List<double> knots = [];
    private readonly List<double> weights = [];
    private readonly List<Point> controls = [];
    private readonly List<Point> fitPoints = [];
    private readonly List<double> heights = [];
    private int flags;
    private int degree;
    private Vector start;
    private Vector end;

    /// <summary>The spline; null when it is faulty, which the log says.</summary>
    public PlaneCurve? Spline(in EntityRecord record)
    {
        if (!Take(record))
        {
            return null;
        }

        if (heights.Count > 0 && heights.Max() - heights.Min() > flatTolerance)
        {
            log.Fault(
                record,
                DxfIssueCodes.EntityNotFlat,
                "has points at different heights (z): flatten the drawing to one plane"
            );
            return null;
        }

        return controls.Count > 0 ? ByControls(record) : ByFitPoints(record);
    }

    private BezierPath? ByControls(in EntityRecord record)
    {
        if (degree < 1 || degree > limits.MaxSplineDegree)
        {
            return Faulty(
                record,
                $"has degree {Wording.Whole(degree)}, and 1 to {Wording.Whole(limits.MaxSplineDegree)} are read"
            );
        }

        if (controls.Count <= degree || knots.Count != controls.Count + degree + 1)
        {
            return Faulty(
                record,
                $"has {Wording.Whole(knots.Count)} knots for {Wording.Whole(controls.Count)} control points of degree "
                    + $"{Wording.Whole(degree)}, which do not belong together: draw it again"
            );
        }

        if (weights.Count > 0 && (weights.Count != controls.Count || weights.Exists(weight => weight <= 0)))
        {
            return Faulty(record, "has weights that are missing or not above zero: draw it again");
        }

        for (int i = 1; i < knots.Count; i++)
        {
            if (knots[i] < knots[i - 1])
            {
                return Faulty(record, "has knots that do not rise: draw it again");
            }
        }

        ControlPoint[] weighted = new ControlPoint[controls.Count];
        for (int i = 0; i < weighted.Length; i++)
        {
            weighted[i] = new ControlPoint(controls[i], weights.Count > 0 ? weights[i] : 1);
        }

        BezierPath path = new([.. SplineSpans.Of(degree, [.. knots], weighted)]);
        return path.Pieces.Length > 0 ? path : Faulty(record, "has knots that are all one: draw it again");
    }

    private BezierPath? ByFitPoints(in EntityRecord record)
    {
        bool isClosed = (flags & ClosedFlags) != 0;
        List<Point> distinct = [];
        foreach (Point point in fitPoints)
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

        if (!isClosed && (start.Length == 0 || end.Length == 0))
        {
            log.Count(
                record,
                DxfIssueCodes.CurveFitted,
                "is given by fit points without end directions, for which programs differ; it was drawn with free ends",
                "are given by fit points without end directions, for which programs differ; they were drawn with free ends"
            );
        }

        return new BezierPath([.. FitPoints.Through(distinct, isClosed, GivenOrNull(start), GivenOrNull(end))]);
    }

    private static Vector? GivenOrNull(Vector direction) => direction.Length > 0 ? direction : null;

    private bool Take(in EntityRecord record)
    {
        knots.Clear();
        weights.Clear();
        controls.Clear();
        fitPoints.Clear();
        heights.Clear();
        (flags, degree, start, end) = (0, 3, default, default);
        double x = double.NaN;
        for (int i = record.First + 1; i < record.End; i++)
        {
            DxfTag tag = file.Tags[i];
            if (tag.Code is not (>= 10 and <= 41 or 70 or 71))
            {
                continue;
            }

            if (!file.TryNumber(tag, out double value))
            {
                log.DamagedNumber(file, tag, record);
                return false;
            }

            Take(tag.Code, value, ref x);
            if (controls.Count > limits.MaxSplinePoints || fitPoints.Count > limits.MaxSplinePoints)
            {
                Faulty(record, $"has more than {Wording.Whole(limits.MaxSplinePoints)} points, which is the limit");
                return false;
            }
        }

        bool isWhole = controls.TrueForAll(point => point.IsFinite) && fitPoints.TrueForAll(point => point.IsFinite);
        if (!isWhole)
        {
            Faulty(record, "has a point without x: draw it again");
        }

        return isWhole;
    }

    private void Take(int code, double value, ref double x)
    {
        switch (code)
        {
            case 10 or 11:
                x = value;
                break;
            case 20:
                controls.Add(new Point(x, value));
                break;
            case 21:
                fitPoints.Add(new Point(x, value));
                break;
            case 30 or 31:
                heights.Add(value);
                break;
            case 12:
                start = start with { X = value };
                break;
            case 22:
                start = start with { Y = value };
                break;
            case 13:
                end = end with { X = value };
                break;
            case 23:
                end = end with { Y = value };
                break;
            case 40:
                knots.Add(value);
                break;
            case 41:
                weights.Add(value);
                break;
            case 70:
                flags = (int)value;
                break;
            case 71:
                degree = (int)value;
                break;
        }
    }

    private BezierPath? Faulty(in EntityRecord record, string what)
    {
        log.Fault(record, DxfIssueCodes.EntityInvalid, what);
        return null;
    }
}
