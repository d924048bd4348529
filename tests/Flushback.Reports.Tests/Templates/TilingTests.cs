using CsCheck;
using Flushback.Geometry;
using Flushback.Reports.Print;
using Flushback.Reports.Templates;

namespace Flushback.Reports.Tests.Templates;

public class TilingTests
{
    private static readonly Gen<(Paper Paper, Box Content, double X, double Y)> _any = Gen.Select(
        Gen.Enum<Paper>(),
        Gen.Double[5, 900],
        Gen.Double[5, 900],
        Gen.Double[0, 1],
        Gen.Double[0, 1],
        (paper, width, height, x, y) =>
            (paper, new Box(-30, 12, -30 + width, 12 + height), -30 + (x * width), 12 + (y * height))
    );

    [Fact]
    public void Every_place_of_the_drawing_is_seen_on_a_sheet() =>
        _any.Sample(any =>
        {
            Tiling tiling = Tiling.Fewest(any.Paper, any.Content);
            Point place = new(any.X, any.Y);
            Assert.Contains(tiling.Tiles, tile => tiling.Shown(tile).Grown(1e-9).Contains(place));
        });

    [Fact]
    public void A_place_lies_on_the_sheet_within_its_margins_and_1_to_1() =>
        _any.Sample(any =>
        {
            Tiling tiling = Tiling.Fewest(any.Paper, any.Content);
            Point place = new(any.X, any.Y);
            Tile tile = tiling.Tiles.First(tile => tiling.Shown(tile).Grown(1e-9).Contains(place));
            Assert.True(tiling.Window.Grown(1e-9).Contains(tile.View.Of(place)));
            Assert.True(tiling.Format.Area.Grown(-Tiling.MarginMm + 1e-9).Contains(tile.View.Of(place)));
            Point moved = tile.View.Of(place + new Vector(3, 4));
            Assert.Equal(5, moved.DistanceTo(tile.View.Of(place)), 1e-9);
        });

    [Fact]
    public void Neighbours_show_the_same_register_marks_whole() =>
        _any.Sample(any =>
        {
            Tiling tiling = Tiling.Fewest(any.Paper, any.Content);
            foreach (Tile tile in tiling.Tiles)
            {
                foreach (Point mark in RegisterMarks.On(tile))
                {
                    int sheets = tiling.Tiles.Count(other =>
                        RegisterMarks.On(other).Any(same => same.IsWithin(1e-6, mark))
                    );
                    Assert.InRange(sheets, 2, 4);
                    Assert.True(tiling.Shown(tile).Grown(-5 + 1e-9).Contains(mark));
                }
            }
        });

    [Fact]
    public void No_other_way_of_turning_the_paper_takes_fewer_sheets()
    {
        // 270 by 150 mm fits a sheet of A4 across, and takes two upright.
        Tiling tiling = Tiling.Fewest(Paper.A4, new Box(0, 0, 270, 140));
        Assert.True(tiling.Format.IsLandscape);
        Assert.Single(tiling.Tiles);
        Assert.False(Tiling.Fewest(Paper.A4, new Box(0, 0, 100, 100)).Format.IsLandscape);
    }
}
