using Flushback.Geometry.Polar;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>Tells whether somewhere a lower boundary of the blade hangs over an upper one, with room between.</summary>
/// <remarks>Keeps buffers between calls; not for use by two threads at once.</remarks>
internal sealed class Overhang
{
    // Up to so many pairs are simply looked at, each.
    private const int FewPairs = 4096;

    // Beyond so many pairs of suspects it is cheaper to take the overhang for granted.
    private const int ManyPairs = 4_000_000;

    private const int BinCount = 512;

    private readonly double[] _lowestUpper = new double[BinCount];
    private readonly List<int> _suspects = [];

    /// <summary>True when one is found; or taken for granted, which costs time but changes no result.</summary>
    public bool Exists(ReadOnlySpan<RadialPiece> lowers, ReadOnlySpan<RadialPiece> uppers)
    {
        if (lowers.Length == 0 || uppers.Length == 0)
        {
            return false;
        }

        _suspects.Clear();
        if (lowers.Length * (long)uppers.Length <= FewPairs)
        {
            for (int i = 0; i < lowers.Length; i++)
            {
                _suspects.Add(i);
            }
        }
        else
        {
            FindSuspects(lowers, uppers);
        }

        if (_suspects.Count * (long)uppers.Length > ManyPairs)
        {
            return true;
        }

        foreach (int suspect in _suspects)
        {
            if (HangsOverAny(lowers[suspect], uppers))
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Lower pieces that reach above the lowest upper piece in some bin of radii.</summary>
    private void FindSuspects(ReadOnlySpan<RadialPiece> lowers, ReadOnlySpan<RadialPiece> uppers)
    {
        double inner = double.PositiveInfinity;
        double outer = 0;
        foreach (ref readonly RadialPiece upper in uppers)
        {
            inner = Math.Min(inner, upper.InnerMm);
            outer = Math.Max(outer, upper.OuterMm);
        }

        double perBin = Math.Max(outer - inner, double.Epsilon) / BinCount;
        int BinOf(double radiusMm) => Math.Clamp((int)((radiusMm - inner) / perBin), 0, BinCount - 1);

        Array.Fill(_lowestUpper, double.PositiveInfinity);
        foreach (ref readonly RadialPiece upper in uppers)
        {
            for (int bin = BinOf(upper.InnerMm); bin <= BinOf(upper.OuterMm); bin++)
            {
                _lowestUpper[bin] = Math.Min(_lowestUpper[bin], upper.MinAngle);
            }
        }

        for (int i = 0; i < lowers.Length; i++)
        {
            for (int bin = BinOf(lowers[i].InnerMm); bin <= BinOf(lowers[i].OuterMm); bin++)
            {
                if (lowers[i].MaxAngle > _lowestUpper[bin])
                {
                    _suspects.Add(i);
                    break;
                }
            }
        }
    }

    private static bool HangsOverAny(in RadialPiece lower, ReadOnlySpan<RadialPiece> uppers)
    {
        foreach (ref readonly RadialPiece upper in uppers)
        {
            double inner = Math.Max(lower.InnerMm, upper.InnerMm);
            double outer = Math.Min(lower.OuterMm, upper.OuterMm);
            if (inner < outer && lower.MaxAngle > upper.MinAngle)
            {
                double middle = (inner + outer) / 2;
                if (lower.AngleAt(middle) > upper.AngleAt(middle))
                {
                    return true;
                }
            }
        }

        return false;
    }
}
