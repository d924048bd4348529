using System.Collections.Immutable;
using Flushback.Geometry;
using Flushback.Patterns;

namespace Flushback.Reports.Templates;

/// <summary>The pieces of a pattern side by side, none over another, each turned as in the knife: blade above spring above handle.</summary>
/// <param name="Pieces">The pieces where they lie.</param>
/// <param name="Bounds">Box around all that is cut, its lower left corner at the origin; millimetres.</param>
public sealed record PieceLayout(ImmutableArray<LaidPiece> Pieces, Box Bounds)
{
    /// <summary>Lays the pieces apart.</summary>
    /// <param name="pattern">The pattern.</param>
    /// <param name="gapMm">Air between two of them, in millimetres.</param>
    public static PieceLayout Of(DrawnPattern pattern, double gapMm)
    {
        ArgumentNullException.ThrowIfNull(pattern);
        double heightMm = pattern.Pieces.Sum(piece => BoundsOf(piece).HeightMm) + (gapMm * (pattern.Pieces.Length - 1));
        double widthMm = pattern.Pieces.Max(piece => BoundsOf(piece).WidthMm);
        ImmutableArray<LaidPiece>.Builder laid = ImmutableArray.CreateBuilder<LaidPiece>();
        double top = heightMm;
        foreach (PatternPiece piece in pattern.Pieces)
        {
            Box box = BoundsOf(piece);
            laid.Add(new LaidPiece(piece, new Vector(-box.MinX, top - box.MaxY)));
            top -= box.HeightMm + gapMm;
        }

        return new PieceLayout(laid.ToImmutable(), new Box(0, 0, widthMm, heightMm));
    }

    // The rough outline lies around the finished one.
    private static Box BoundsOf(PatternPiece piece) => piece.Rough.Bounds;
}

/// <summary>A piece that was moved to lie beside others.</summary>
/// <param name="Piece">The piece in the knife frame.</param>
/// <param name="By">From there to where it lies, in millimetres.</param>
public sealed record LaidPiece(PatternPiece Piece, Vector By)
{
    private RigidMotion Motion => new RigidMotion(Angle.Zero, By);

    /// <summary>The outline that is cut, where it lies.</summary>
    public Outline Cut => Piece.Rough.Transformed(Motion);

    /// <summary>The finished outline, where it lies.</summary>
    public Outline Finished => Piece.Finished.Transformed(Motion);

    /// <summary>The pin holes, where they lie.</summary>
    public ImmutableArray<PatternHole> Holes =>
        [.. Piece.Holes.Select(hole => hole with { Circle = Motion.Apply(hole.Circle) })];

    /// <summary>The marks, where they lie.</summary>
    public ImmutableArray<PatternMark> Marks =>
        [.. Piece.Marks.Select(mark => mark with { Outline = mark.Outline.Transformed(Motion) })];
}
