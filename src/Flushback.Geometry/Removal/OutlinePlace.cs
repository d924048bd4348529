using Flushback.Geometry.Crossings;
using Flushback.Geometry.Distances;

namespace Flushback.Geometry.Removal;

/// <summary>A place on an outline: an edge and the fraction of its length.</summary>
/// <param name="EdgeIndex">Which edge.</param>
/// <param name="Fraction">In [0, 1].</param>
public readonly record struct OutlinePlace(int EdgeIndex, double Fraction) : IComparable<OutlinePlace>
{
    // Nearer to the end than this is rounding of a fraction.
    private const double AtEnd = 1e-12;

    /// <summary>The place of an outline nearest to a point.</summary>
    public static OutlinePlace Nearest(Outline outline, Point to)
    {
        ArgumentNullException.ThrowIfNull(outline);
        int best = 0;
        Nearest nearest = Distances.Nearest.None;
        for (int i = 0; i < outline.Edges.Length; i++)
        {
            Nearest here = Distance.Between(to, outline.Edges[i]);
            if (here.DistanceMm < nearest.DistanceMm)
            {
                (best, nearest) = (i, here);
            }
        }

        return new OutlinePlace(best, Math.Clamp(EdgePosition.FractionAt(outline.Edges[best], nearest.OnSecond), 0, 1));
    }

    /// <summary>Where that is.</summary>
    public Point On(Outline outline) => outline.Edges[EdgeIndex].PointAt(Fraction);

    /// <summary>The same place told by the edge that leaves it, where it is the end of one.</summary>
    internal OutlinePlace Leaving(Outline outline) =>
        Fraction >= 1 - AtEnd ? new OutlinePlace((EdgeIndex + 1) % outline.Edges.Length, 0) : this;

    /// <summary>By edge, then along the edge: in the direction of travel from the first edge.</summary>
    public int CompareTo(OutlinePlace other) => (EdgeIndex, Fraction).CompareTo((other.EdgeIndex, other.Fraction));

    /// <summary>True when a comes before b.</summary>
    public static bool operator <(OutlinePlace a, OutlinePlace b) => a.CompareTo(b) < 0;

    /// <summary>True when a comes after b.</summary>
    public static bool operator >(OutlinePlace a, OutlinePlace b) => a.CompareTo(b) > 0;

    /// <summary>True when a does not come after b.</summary>
    public static bool operator <=(OutlinePlace a, OutlinePlace b) => a.CompareTo(b) <= 0;

    /// <summary>True when a does not come before b.</summary>
    public static bool operator >=(OutlinePlace a, OutlinePlace b) => a.CompareTo(b) >= 0;
}
