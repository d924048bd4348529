using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;

namespace Flushback.Mechanism.Plans.Solving;

/// <summary>Blade angles at which a stop may rest.</summary>
internal readonly record struct AngleWindow(Angle Least, Angle Most)
{
    private static readonly Angle _step = Angle.FromDegrees(0.01);

    public bool Contains(Angle angle, double marginRad = 0) =>
        angle.Radians >= Least.Radians - marginRad && angle.Radians <= Most.Radians + marginRad;

    /// <summary>About the nominal angle of a stop.</summary>
    public static AngleWindow About(StopReading reading, PlanSettings settings)
    {
        Angle most = reading.Stop == Stop.Open ? settings.OpenAngleTolerance : settings.RestAngleTolerance;
        return new AngleWindow(reading.NominalAngle - most, reading.NominalAngle + most);
    }

    /// <summary>The part of a window in which the tip lies as deep as wanted; null when there is none.</summary>
    /// <remarks>The tip moves about the pivot alone, so its depth is a matter of the blade angle only.</remarks>
    public AngleWindow? WithTip(Knife knife, LengthWindow depth)
    {
        ClearanceMeter meter = new(knife);
        double Outside(Angle angle)
        {
            double? tip = meter.TipDepthMm(angle);
            return tip is { } mm ? Math.Max(depth.LeastMm - mm, mm - depth.MostMm) : 0;
        }

        Angle? from = null;
        int count = (int)Math.Ceiling((Most - Least).Radians / _step.Radians);
        Angle step = (Most - Least) * (1.0 / Math.Max(1, count));
        for (int i = 0; i <= count; i++)
        {
            Angle at = Least + (step * i);
            bool inside = Outside(at) <= 0;
            if (inside && from is null)
            {
                from = i == 0 ? at : Edge(at - step, at, Outside);
            }
            else if (!inside && from is { } start)
            {
                return new AngleWindow(start, Edge(at, at - step, Outside));
            }
        }

        return from is { } first ? new AngleWindow(first, Most) : null;
    }

    /// <summary>The angle nearest to one outside at which it is inside.</summary>
    private static Angle Edge(Angle outside, Angle inside, Func<Angle, double> distance)
    {
        for (int i = 0; i < 40; i++)
        {
            Angle middle = (outside + inside) * 0.5;
            (outside, inside) = distance(middle) <= 0 ? (outside, middle) : (middle, inside);
        }

        return inside;
    }
}
