using System.Collections.Immutable;
using Flushback.Dxf;
using Flushback.Dxf.Writing;
using Flushback.Geometry;
using Flushback.Geometry.Offsets;
using Flushback.Patterns;
using Flushback.Reports.Templates;

namespace Flushback.Service.Artifacts;

/// <summary>
/// The pieces of a pattern side by side for the shop: what is cut on a layer a piece, and on layers of ours, which an
/// inspection leaves aside, the finished outlines within stock, the middle of the kerf, marks, and names with how many are cut.
/// </summary>
internal static class CutSheetDxf
{
    /// <summary>Layer of the finished outlines of pieces that are cut with stock.</summary>
    public const string FinishedLayer = "FLUSHBACK_FINISHED";

    private const int White = 7;
    private const int Green = 3;
    private const int Red = 1;
    private const int Blue = 5;
    private const int Grey = 8;

    // Two millimetres and a torch's kerf on either side still leave a web between pieces.
    private const double GapMm = 8;
    private const double TextMm = 2.5;
    private const double TextBelowMm = 3.5;

    /// <summary>The drawing.</summary>
    public static byte[] Of(
        DrawnPattern pattern,
        DxfVersion version,
        DrawingUnit unit,
        CancellationToken cancellation = default
    ) => DxfWriter.Write(version, unit, [.. Layers(pattern, unit, cancellation)]);

    private static IEnumerable<OverlayLayer> Layers(
        DrawnPattern pattern,
        DrawingUnit unit,
        CancellationToken cancellation
    )
    {
        PieceLayout layout = PieceLayout.Of(pattern, GapMm);
        foreach (LaidPiece piece in layout.Pieces)
        {
            yield return new OverlayLayer(
                PieceWords.Layer(piece.Piece),
                White,
                [OverlayPath.Of(piece.Cut), .. piece.Holes.Select(hole => new OverlayCircle(hole.Circle))]
            );
        }

        if (layout.Pieces.Any(piece => piece.Piece.HasStock))
        {
            yield return new OverlayLayer(
                FinishedLayer,
                Green,
                [.. layout.Pieces.Where(piece => piece.Piece.HasStock).Select(piece => OverlayPath.Of(piece.Finished))]
            );
        }

        yield return PatternMarks.On(layout.Pieces.SelectMany(piece => piece.Marks));
        yield return new OverlayLayer("FLUSHBACK_TEXT", Grey, [.. layout.Pieces.Select(piece => LabelOf(piece, unit))]);
        if (pattern.Dimensions.Stock.KerfMm > 0)
        {
            ImmutableArray<Region> paths =
            [
                .. layout.Pieces.SelectMany(piece =>
                    KerfPath.Around(RegionOf(piece), pattern.Dimensions.Stock.KerfMm, cancellation).Paths
                ),
            ];
            yield return new OverlayLayer(
                CutPathDrawing.InsideLayer,
                Blue,
                [.. paths.SelectMany(path => path.Holes).Select(OverlayPath.Of)]
            );
            yield return new OverlayLayer(
                CutPathDrawing.OutsideLayer,
                Red,
                [.. paths.Select(path => OverlayPath.Of(path.Border))]
            );
        }
    }

    private static Region RegionOf(LaidPiece piece) =>
        new(piece.Cut, [.. piece.Holes.Select(hole => OutlineOf(hole.Circle))]);

    private static Outline OutlineOf(Circle circle)
    {
        Vector right = new(circle.RadiusMm, 0);
        return Outline.FromVertices([new Vertex(circle.Centre + right, 1), new Vertex(circle.Centre - right, 1)]);
    }

    private static OverlayText LabelOf(LaidPiece piece, DrawingUnit unit)
    {
        Box box = piece.Cut.Bounds;
        string text = $"{PieceWords.Layer(piece.Piece)}, {PieceWords.Cut(piece.Piece, unit == DrawingUnit.Inch)}";
        return new OverlayText(text, new Point(box.MinX, box.MinY - TextBelowMm), TextMm);
    }
}
