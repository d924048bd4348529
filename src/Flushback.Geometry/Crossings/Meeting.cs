namespace Flushback.Geometry.Crossings;

/// <summary>How two edges meet.</summary>
public enum MeetingKind
{
    /// <summary>They pass through one another at a point inside both.</summary>
    Crossing,

    /// <summary>An end of one lies on the other, or on its end.</summary>
    Touch,

    /// <summary>They touch inside both without passing, or pass by less than the tolerance.</summary>
    Tangency,

    /// <summary>They run along one another for a stretch longer than the tolerance.</summary>
    Overlap,
}

/// <summary>A stretch of an edge by fractions of its length, in its direction of travel; both equal for a single point.</summary>
/// <param name="From">Where it begins, in [0, 1].</param>
/// <param name="To">Where it ends, in [0, 1], not before <paramref name="From"/>.</param>
public readonly record struct Stretch(double From, double To)
{
    /// <summary>The fraction in the middle.</summary>
    public double Middle => (From + To) / 2;
}

/// <summary>A place where two edges meet: a point, or a stretch they share.</summary>
/// <param name="Kind">How they meet.</param>
/// <param name="OnFirst">Where on the first edge.</param>
/// <param name="OnSecond">Where on the second edge.</param>
/// <param name="At">The point; for an overlap the middle of the stretch, on the first edge.</param>
public readonly record struct Meeting(MeetingKind Kind, Stretch OnFirst, Stretch OnSecond, Point At);

/// <summary>All places where two edges meet: none, one or two.</summary>
/// <param name="Count">How many there are.</param>
/// <param name="First">The first, when there is one.</param>
/// <param name="Second">The second, when there are two.</param>
public readonly record struct Meetings(int Count, Meeting First, Meeting Second)
{
    /// <summary>The edges stay apart.</summary>
    public static Meetings None => default;

    /// <summary>One of the meetings.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The index is not below <see cref="Count"/>.</exception>
    public Meeting this[int index]
    {
        get
        {
            ArgumentOutOfRangeException.ThrowIfNegative(index);
            ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(index, Count);
            return index == 0 ? First : Second;
        }
    }

    /// <summary>These with one more; a third is left out, since two edges of different carriers meet twice at most.</summary>
    internal Meetings With(Meeting next) =>
        Count switch
        {
            0 => new Meetings(1, next, default),
            1 => new Meetings(2, First, next),
            _ => this,
        };
}
