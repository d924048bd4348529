using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Geometry;

namespace Flushback.Dxf.Tests;

/// <summary>Which layer a block's entities take, what hides them, and how they are named.</summary>
public sealed class BlockTests
{
    private const string Tables =
        "0\nTABLE\n2\nLAYER\n70\n2\n0\nLAYER\n2\nOFF\n70\n0\n62\n-7\n0\nLAYER\n2\nICE\n70\n1\n62\n7\n0\nENDTAB\n";

    [Fact]
    public void What_lies_on_layer_0_takes_the_layer_of_the_insert_and_the_rest_keeps_its_own()
    {
        DxfDrawing drawing = Drawing(Insert("BLADE"), Drawn.Circle(0, 0, 1, "0") + Drawn.Circle(0, 0, 2, "PINS"));
        Assert.Equal(["BLADE", "PINS"], drawing.Shapes.Select(shape => shape.Layer));
    }

    [Fact]
    public void An_insert_that_is_frozen_hides_all_of_its_block_and_one_that_is_off_only_what_takes_its_layer()
    {
        string content = Drawn.Circle(0, 0, 1, "0") + Drawn.Circle(0, 0, 2, "PINS");
        Assert.Empty(Drawing(Insert("ICE"), content).Shapes);
        Assert.Equal("PINS", Assert.Single(Drawing(Insert("OFF"), content).Shapes).Layer);
    }

    [Fact]
    public void An_entity_of_a_block_is_named_by_the_way_to_it()
    {
        DxfDrawing drawing = Drawing(Insert("BLADE", "4A"), Drawn.Circle(0, 0, 1, "0", "2F"));
        Assert.Equal("4A/2F", Assert.Single(drawing.Shapes).Handle);
        Assert.Equal(
            ["4A/2F"],
            Assert.Single(DxfContours.ContoursOf(drawing, "BLADE", 0).Circles).Handles.AsEnumerable()
        );
    }

    [Fact]
    public void The_base_point_goes_where_the_insert_is_and_the_array_runs_along_its_axes()
    {
        string array =
            Insert("BLADE") + Drawn.Groups((50, 90), (41, 2), (42, 2), (70, 2), (71, 2), (44, 10), (45, 100));
        Circle[] circles =
        [
            .. Drawing(array, Drawn.Circle(3, 4, 1, "0"), baseX: 2, baseY: 4)
                .Shapes.Select(shape => Assert.IsType<FullCircle>(shape.Geometry).Circle),
        ];

        // One along x from the base, doubled and turned, is two along y; columns then run along y and rows along -x.
        Assert.Equal([new(new(7, 10), 2), new(new(7, 20), 2), new(new(-93, 10), 2), new(new(-93, 20), 2)], circles);
    }

    [Fact]
    public void Blocks_as_deep_as_the_limit_are_read_and_deeper_ones_are_not()
    {
        static string Nested(int depth) =>
            string.Concat(Enumerable.Range(0, depth - 1).Select(i => Block($"B{i}", Insert("0", block: $"B{i + 1}"))))
            + Block($"B{depth - 1}", Drawn.Circle(0, 0, 1, "0"));
        Assert.Single(Read(Insert("BLADE", block: "B0"), Nested(8)).Drawing!.Shapes);
        DxfIssue refused = Assert.Single(Read(Insert("BLADE", block: "B0"), Nested(9)).Issues);
        Assert.Equal((DxfIssueCodes.TooLarge, DxfIssueKind.LimitExceeded), (refused.Code, refused.Kind));
    }

    private static string Insert(string layer, string handle = "", string block = "S") =>
        Drawn.Entity("INSERT", layer, handle) + $"2\n{block}\n" + Drawn.Groups((10, 7), (20, 8));

    private static string Block(string name, string content, double baseX = 0, double baseY = 0) =>
        $"0\nBLOCK\n8\n0\n2\n{name}\n70\n0\n" + Drawn.Groups((10, baseX), (20, baseY)) + content + "0\nENDBLK\n8\n0\n";

    private static DxfDrawing Drawing(string insert, string content, double baseX = 0, double baseY = 0) =>
        Assert.IsType<DxfDrawing>(Read(insert, Block("S", content, baseX, baseY)).Drawing);

    private static DxfReadResult Read(string entities, string blocks) =>
        Drawn.Read(
            Drawn.Section("HEADER", Drawn.InMillimetres)
                + Drawn.Section("TABLES", Tables)
                + Drawn.Section("BLOCKS", blocks)
                + Drawn.Section("ENTITIES", entities)
                + "0\nEOF\n"
        );
}
