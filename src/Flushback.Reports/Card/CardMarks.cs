using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Reports.Print;

namespace Flushback.Reports.Card;

/// <summary>Something drawn on a card, in millimetres of paper from the lower left corner of its picture, y up.</summary>
internal abstract record CardMark;

/// <summary>Lines and arcs that follow one another.</summary>
internal sealed record CardLine(ImmutableArray<Edge> Edges, CardInk Ink) : CardMark
{
    public static CardLine Straight(Point from, Point to, CardInk ink) => new([new Edge(from, to)], ink);
}

/// <summary>A closed chain of lines and arcs, filled.</summary>
internal sealed record CardArea(ImmutableArray<Edge> Edges, CardInk Ink) : CardMark;

/// <summary>A line of words.</summary>
/// <param name="At">The point of the base line that the anchor names.</param>
/// <param name="Words">The words.</param>
/// <param name="SizeMm">Size of the type.</param>
/// <param name="Anchor">Which point of the base line the place is.</param>
/// <param name="Turn">By how much they are turned counter-clockwise about it.</param>
/// <param name="IsBold">Whether they are bold.</param>
internal sealed record CardWords(
    Point At,
    string Words,
    double SizeMm,
    TextAnchor Anchor = TextAnchor.Left,
    Angle Turn = default,
    bool IsBold = false
) : CardMark;

/// <summary>How a mark is drawn: a stroke, a fill, or both.</summary>
internal sealed record CardInk(Stroke? Stroke, PrintColour? Fill = null)
{
    private static readonly PrintColour _red = new(163, 38, 28);

    /// <summary>Metal that stays.</summary>
    public static CardInk Metal { get; } = new(new Stroke(0.3), PrintColour.Grey(232));

    /// <summary>Metal to take off.</summary>
    public static CardInk Removed { get; } = new(new Stroke(0.1, _red), _red);

    /// <summary>Hatch over the air along metal to take off, since the metal itself is thin.</summary>
    public static CardInk Hatch { get; } = new(new Stroke(0.18, _red));

    /// <summary>A pin's hole.</summary>
    public static CardInk Pin { get; } = new(new Stroke(0.25), PrintColour.White);

    /// <summary>A line from words to what they are about, a centre line.</summary>
    public static CardInk Leader { get; } = new(new Stroke(0.15));

    /// <summary>A head of an arrow.</summary>
    public static CardInk Head { get; } = new(null, PrintColour.Black);

    /// <summary>The frame of the picture, and the scale bar.</summary>
    public static CardInk Frame { get; } = new(new Stroke(0.2));
}
