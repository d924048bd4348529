using Flushback.Geometry;
using Flushback.Patterns;
using Flushback.Reports.Templates;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests.Templates;

public class PieceLayoutTests
{
    [Fact]
    public void No_piece_lies_within_the_gap_of_another()
    {
        PieceLayout layout = PieceLayout.Of(SamplePatterns.Rough, gapMm: 8);
        Box[] boxes = [.. layout.Pieces.Select(piece => piece.Cut.Bounds)];
        Assert.Equal(8, boxes[0].GapTo(boxes[1]), 1e-9);
        Assert.Equal(8, boxes[1].GapTo(boxes[2]), 1e-9);
        Assert.All(boxes, box => Assert.Equal(0, box.MinX, 1e-9));
        Assert.Equal(boxes.Aggregate(Box.Empty, (all, box) => all.Including(box)).MaxY, layout.Bounds.MaxY, 1e-9);
        Assert.Equal(0, layout.Bounds.MinY, 1e-9);
    }

    [Fact]
    public void A_piece_is_moved_as_a_whole()
    {
        foreach (LaidPiece laid in PieceLayout.Of(SamplePatterns.Rough, gapMm: 8).Pieces)
        {
            Assert.Equal(laid.Piece.Rough.AreaMm2, laid.Cut.AreaMm2, 1e-9);
            foreach ((PatternHole before, PatternHole after) in laid.Piece.Holes.Zip(laid.Holes))
            {
                Assert.True((before.Circle.Centre + laid.By).IsWithin(1e-12, after.Circle.Centre));
            }
        }
    }
}
