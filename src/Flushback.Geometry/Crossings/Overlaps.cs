namespace Flushback.Geometry.Crossings;

/// <summary>Stretches shared by two edges of one carrier: up to two, since arcs of one circle can share both ends.</summary>
internal static class Overlaps
{
    /// <summary>Whether the shorter of two edges lies on the carrier of the longer one, to within a tolerance.</summary>
    /// <remarks>
    /// Three points are enough: two circles (or a circle and a line) that agree in three points well apart agree
    /// everywhere between.
    /// </remarks>
    public static bool RunTogether(in Edge a, in Edge b, double toleranceMm)
    {
        (Edge longer, Edge shorter) = a.LengthMm >= b.LengthMm ? (a, b) : (b, a);
        return IsOn(longer, shorter.Start, toleranceMm)
            && IsOn(longer, shorter.End, toleranceMm)
            && IsOn(longer, shorter.PointAt(0.5), toleranceMm);
    }

    /// <summary>The meetings of two edges that run together.</summary>
    public static Meetings Between(in Edge a, in Edge b, double toleranceMm)
    {
        double period = a.IsArc ? Math.Tau / Math.Abs(a.Sweep.Radians) : double.PositiveInfinity;
        double start = EdgePosition.FractionAt(a, b.Start);
        double end = EdgePosition.FractionAt(a, b.End);
        double length = b.LengthMm / a.LengthMm;
        bool isReversed = a.IsArc && b.IsArc ? a.Bulge * b.Bulge < 0 : end < start;
        double from = isReversed ? end : start;

        // On a circle the second edge may meet the first from its start on and again, a full turn earlier or later.
        Meetings found = default;
        for (int turn = double.IsInfinity(period) ? 0 : -1; turn <= (double.IsInfinity(period) ? 0 : 1); turn++)
        {
            double shift = turn == 0 ? 0 : turn * period;
            double low = Math.Max(0, from + shift);
            double high = Math.Min(1, from + shift + length);
            if ((high - low) * a.LengthMm < -toleranceMm)
            {
                continue;
            }

            (low, high) = low <= high ? (low, high) : ((low + high) / 2, (low + high) / 2);
            (low, high) = (Math.Clamp(low, 0, 1), Math.Clamp(high, 0, 1));
            found = found.With(MeetingOn(a, b, new Stretch(low, high), toleranceMm));
        }

        return found;
    }

    private static Meeting MeetingOn(in Edge a, in Edge b, Stretch onA, double toleranceMm)
    {
        double atFrom = Math.Clamp(EdgePosition.FractionAt(b, a.PointAt(onA.From)), 0, 1);
        double atTo = Math.Clamp(EdgePosition.FractionAt(b, a.PointAt(onA.To)), 0, 1);
        Stretch onB = new(Math.Min(atFrom, atTo), Math.Max(atFrom, atTo));
        bool isPoint = (onA.To - onA.From) * a.LengthMm <= toleranceMm;
        return new Meeting(isPoint ? MeetingKind.Touch : MeetingKind.Overlap, onA, onB, a.PointAt(onA.Middle));
    }

    private static bool IsOn(in Edge carrier, Point p, double toleranceMm) =>
        Math.Abs(carrier.LeftOfCarrierMm(p)) <= toleranceMm;
}
