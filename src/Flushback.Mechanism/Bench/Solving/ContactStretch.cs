using Flushback.Geometry;
using Flushback.Geometry.Distances;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>A stretch along which a straight face of the blade lies within the contact tolerance of one of the spring.</summary>
/// <param name="From">Where it begins, along the blade's direction of travel.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Nearest">Where the gap is least; the middle where it is the same all along.</param>
/// <param name="LeastGapMm">The gap there.</param>
/// <param name="BladeEdge">An edge of the blade in it.</param>
/// <param name="SpringEdge">An edge of the spring in it.</param>
internal readonly record struct ContactStretch(
    Point From,
    Point To,
    Point Nearest,
    double LeastGapMm,
    int BladeEdge,
    int SpringEdge
)
{
    /// <summary>Shorter than this, two faces touch at a point: a land so short, or a tilt, is none to the touch.</summary>
    private const double ShortestFaceMm = 0.2;

    // Two lines that cross face each other over rounding only.
    private const double ShortestMm = 1e-7;

    // Sine of the tilt beyond which two lines do not face each other.
    private const double MostTilt = 0.05;

    // Ends that meet within this belong to one stretch.
    private const double JoinMm = 1e-6;

    private const double LevelMm = 1e-8;

    /// <summary>Length of the stretch.</summary>
    public double LengthMm => From.DistanceTo(To);

    /// <summary>True when it is too short to be a face.</summary>
    public bool IsPoint => LengthMm < ShortestFaceMm;

    /// <summary>The middle of a face, the nearest place of a point.</summary>
    public Point Place => IsPoint ? Nearest : From.MidpointTo(To);

    /// <summary>True when a point lies on the stretch or right next to it.</summary>
    public bool Covers(Point at) => at.DistanceTo(From.MidpointTo(To)) <= (LengthMm / 2) + 0.01;

    /// <summary>All stretches among pairs of edges, those that continue one another joined.</summary>
    public static List<ContactStretch> AllOf(
        IEnumerable<((int Blade, int Spring) Index, Edge Blade, Edge Spring)> pairs,
        double toleranceMm
    )
    {
        List<ContactStretch> stretches = [];
        foreach (((int Blade, int Spring) index, Edge blade, Edge spring) in pairs)
        {
            if (Between(index, blade, spring, toleranceMm) is { } stretch)
            {
                Join(stretches, stretch);
            }
        }

        return stretches;
    }

    private static void Join(List<ContactStretch> stretches, ContactStretch stretch)
    {
        for (int i = stretches.Count - 1; i >= 0; i--)
        {
            ContactStretch other = stretches[i];
            bool before = other.To.IsWithin(JoinMm, stretch.From);
            bool after = other.From.IsWithin(JoinMm, stretch.To);
            if ((before || after) && SameLine(other, stretch))
            {
                stretch = before ? Joined(other, stretch) : Joined(stretch, other);
                stretches.RemoveAt(i);
            }
        }

        stretches.Add(stretch);
    }

    // At a corner where both faces of it touch, two stretches meet that are no continuation of each other.
    private static bool SameLine(in ContactStretch a, in ContactStretch b) =>
        Math.Abs((a.To - a.From).Normalized.Cross((b.To - b.From).Normalized)) < MostTilt;

    private static bool Face(Vector bladeAlong, Vector springAlong) =>
        bladeAlong.Dot(springAlong) < 0 && Math.Abs(bladeAlong.Cross(springAlong)) < MostTilt;

    private static ContactStretch Joined(in ContactStretch first, in ContactStretch second)
    {
        bool level = Math.Abs(first.LeastGapMm - second.LeastGapMm) < LevelMm;
        ContactStretch nearer = first.LeastGapMm <= second.LeastGapMm ? first : second;
        return nearer with
        {
            From = first.From,
            To = second.To,
            Nearest = level ? first.From.MidpointTo(second.To) : nearer.Nearest,
        };
    }

    /// <summary>The part of two facing lines that lies within tolerance; the gap of two lines changes evenly along them.</summary>
    private static ContactStretch? Between((int Blade, int Spring) index, Edge blade, Edge spring, double toleranceMm)
    {
        if (blade.IsArc || spring.IsArc || !Face(blade.Chord.Normalized, spring.Chord.Normalized))
        {
            return null;
        }

        Vector along = blade.Chord.Normalized;
        double from = Math.Max(0, (spring.End - blade.Start).Dot(along));
        double to = Math.Min(blade.Chord.Length, (spring.Start - blade.Start).Dot(along));
        if (to - from < ShortestMm)
        {
            return null;
        }

        double fromGap = Distance.Between(blade.Start + (along * from), spring).DistanceMm;
        double toGap = Distance.Between(blade.Start + (along * to), spring).DistanceMm;
        if (Math.Min(fromGap, toGap) > toleranceMm)
        {
            return null;
        }

        double perMm = (toGap - fromGap) / (to - from);
        double least =
            Math.Abs(toGap - fromGap) < LevelMm ? (from + to) / 2
            : toGap < fromGap ? to
            : from;
        double last = toGap > toleranceMm ? from + ((toleranceMm - fromGap) / perMm) : to;
        double first = fromGap > toleranceMm ? to - ((toGap - toleranceMm) / perMm) : from;
        return new ContactStretch(
            blade.Start + (along * first),
            blade.Start + (along * last),
            blade.Start + (along * least),
            Math.Min(fromGap, toGap),
            index.Blade,
            index.Spring
        );
    }
}
