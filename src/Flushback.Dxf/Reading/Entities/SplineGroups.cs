using Flushback.Dxf.Tags;
using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Entities;

/// <summary>The groups of one SPLINE, gathered: codes that repeat become lists.</summary>
internal sealed class SplineGroups(TagFile file, ReadingLog log)
{
    /// <summary>Knots, as written.</summary>
    public List<double> Knots { get; } = [];

    /// <summary>Weights of the control points; empty when the spline is not rational.</summary>
    public List<double> Weights { get; } = [];

    /// <summary>Control points; one without x is not finite.</summary>
    public List<Point> Controls { get; } = [];

    /// <summary>Points to pass through; one without x is not finite.</summary>
    public List<Point> FitPoints { get; } = [];

    /// <summary>The z of all points.</summary>
    public List<double> Heights { get; } = [];

    /// <summary>Closed, periodic, rational and so on.</summary>
    public int Flags { get; private set; }

    /// <summary>Degree; 3 when the spline does not say.</summary>
    public int Degree { get; private set; }

    /// <summary>Direction at the first fit point; zero when the spline gives none.</summary>
    public Vector Start { get; private set; }

    /// <summary>Direction at the last fit point; zero when the spline gives none.</summary>
    public Vector End { get; private set; }

    /// <summary>Takes the groups of an entity; false when a number is damaged, which the log says.</summary>
    public bool TryTake(in EntityRecord record)
    {
        Knots.Clear();
        Weights.Clear();
        Controls.Clear();
        FitPoints.Clear();
        Heights.Clear();
        (Flags, Degree, Start, End) = (0, 3, default, default);
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
        }

        return true;
    }

    private void Take(int code, double value, ref double x)
    {
        switch (code)
        {
            case 10 or 11:
                x = value;
                break;
            case 20:
                Controls.Add(new Point(x, value));
                break;
            case 21:
                FitPoints.Add(new Point(x, value));
                break;
            case 30 or 31:
                Heights.Add(value);
                break;
            case 12:
                Start = Start with { X = value };
                break;
            case 22:
                Start = Start with { Y = value };
                break;
            case 13:
                End = End with { X = value };
                break;
            case 23:
                End = End with { Y = value };
                break;
            case 40:
                Knots.Add(value);
                break;
            case 41:
                Weights.Add(value);
                break;
            case 70:
                Flags = (int)value;
                break;
            case 71:
                Degree = (int)value;
                break;
        }
    }
}
