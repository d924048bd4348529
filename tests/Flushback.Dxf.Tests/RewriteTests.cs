using System.Globalization;
using System.Text;
using System.Text.Json;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Dxf.Writing;
using Flushback.Geometry;

namespace Flushback.Dxf.Tests;

/// <summary>Entities replaced in the user's file: an independent reader sees the new ones and all the others as before.</summary>
public sealed class RewriteTests(EzdxfDrawings drawings) : IClassFixture<EzdxfDrawings>
{
    private const string Foreign = "Griffschale_\u00e4\u00df";

    private static readonly Edge Line = new(new(1.0 / 3, 0), new(30.1, -1e-7));
    private static readonly Edge Arc = new(new(3, 4), new(-5, 0.125), -0.7);

    [Theory]
    [MemberData(nameof(EzdxfDrawings.AllFiles), MemberType = typeof(EzdxfDrawings))]
    public void What_was_named_is_replaced_and_the_rest_stays(string name)
    {
        byte[] original = drawings.Bytes(name);
        DxfShape[] shapes = [.. Drawing(original).Shapes];
        DxfShape line = shapes.First(shape => shape.TypeName == "LINE");
        DxfShape polyline = shapes.First(shape => shape.Layer == "SPRING");
        DxfShape circle = shapes.First(shape => shape.Layer == Foreign);
        RewrittenDrawing rewritten = DxfRewrite.Apply(
            original,
            DrawingUnit.Millimetre,
            [
                new DxfReplacement([line], "BLADE", [new OverlayEdge(Line), new OverlayEdge(Arc)]),
                DxfReplacement.LeavingOut(polyline),
                new DxfReplacement([circle], Foreign, [new OverlayCircle(new Circle(new(1, 2), 3.5))]),
                new DxfReplacement([], "SPRING", [OverlayPath.Of(Marks.Shape)]),
            ]
        );
        JsonElement before = Referee.Dump(original);
        JsonElement after = Referee.Dump(rewritten.Bytes);

        Assert.Empty(rewritten.Refused);
        Assert.Empty(rewritten.Issues);
        Marks.AssertClean(after);
        string[] gone = [line.Handle, polyline.Handle, circle.Handle];
        string[] kept = [.. Marks.Entities(before).Where(e => !gone.Contains(HandleOf(e))).Select(e => e.GetRawText())];
        HashSet<string> known = [.. Marks.Entities(before).Select(HandleOf)];
        JsonElement[] added = [.. Marks.Entities(after).Where(e => !known.Contains(HandleOf(e)))];
        Assert.Equal(kept, Marks.Entities(after).Where(e => known.Contains(HandleOf(e))).Select(e => e.GetRawText()));
        Assert.Equal(before.GetProperty("layers").GetRawText(), after.GetProperty("layers").GetRawText());
        Assert.Equal(before.GetProperty("blocks").GetRawText(), after.GetProperty("blocks").GetRawText());

        Assert.Equal(["BLADE", "BLADE", Foreign, "SPRING"], added.Select(e => e.GetProperty("layer").GetString()));
        AssertNear(Line.Start, added[0].GetProperty("start"));
        AssertNear(Line.End, added[0].GetProperty("end"));
        AssertNear(Arc.Centre, added[1].GetProperty("centre"));
        Assert.Equal(Arc.RadiusMm, added[1].GetProperty("radius").GetDouble(), 1e-9);
        AssertNear(new Point(1, 2), added[2].GetProperty("centre"));
        Assert.Equal(3.5, added[2].GetProperty("radius").GetDouble());
        Marks.AssertVertices(added[3], Marks.Shape.Vertices, isClosed: true, 1);
    }

    [Theory]
    [MemberData(nameof(EzdxfDrawings.TextFiles), MemberType = typeof(EzdxfDrawings))]
    public void Leaving_out_takes_the_lines_of_the_entity_and_no_other(string name)
    {
        byte[] original = drawings.Bytes(name);
        foreach (DxfShape shape in Drawing(original).Shapes)
        {
            // Its lines run from its type to that of the next entity; vertices and their end mark belong to it.
            List<string> lines = [.. Encoding.Latin1.GetString(original).Split('\n')];
            int end = shape.Line + 1;
            while (lines[end].Trim() != "0" || lines[end + 1].Trim() is "VERTEX" or "SEQEND")
            {
                end += 2;
            }

            lines.RemoveRange(shape.Line - 1, end - shape.Line + 1);
            byte[] rewritten = DxfRewrite
                .Apply(original, DrawingUnit.Millimetre, [DxfReplacement.LeavingOut(shape)])
                .Bytes;
            Assert.Equal(WithoutSeed(lines), WithoutSeed([.. Encoding.Latin1.GetString(rewritten).Split('\n')]));
        }
    }

    // Every line but the handle seed, which may be raised.
    private static List<string> WithoutSeed(List<string> lines)
    {
        int seed = lines.FindIndex(line => line.Trim() == "$HANDSEED") + 2;
        lines.RemoveAt(seed);
        return lines;
    }

    [Theory]
    [MemberData(nameof(EzdxfDrawings.TextFiles), MemberType = typeof(EzdxfDrawings))]
    public void New_handles_are_unique_and_the_seed_lies_above_them(string name)
    {
        byte[] original = drawings.Bytes(name);
        DxfShape shape = Drawing(original).Shapes[0];
        byte[] rewritten = DxfRewrite
            .Apply(
                original,
                DrawingUnit.Millimetre,
                [new DxfReplacement([shape], shape.Layer, [OverlayPath.Of(Marks.Shape), new OverlayEdge(Arc)])]
            )
            .Bytes;
        Handles.AssertUniqueBelowTheSeed(rewritten);
    }

    [Fact]
    public void New_entities_take_the_place_colour_line_and_height_of_the_first_gone()
    {
        string drawn =
            Drawn.Circle(0, 0, 1, handle: "A1")
            + Drawn
                .Line(0, 0, 5, 0, handle: "A2")
                .Replace("8\nBLADE\n", "8\nBLADE\n6\nDASHED\n62\n3\n370\n25\n", StringComparison.Ordinal)
            + "30\n7.5\n31\n7.5\n"
            + Drawn.Circle(9, 9, 1, handle: "A3");
        byte[] original = Encoding.ASCII.GetBytes(Drawn.File(drawn));
        DxfShape[] shapes = [.. Drawing(original).Shapes];
        string rewritten = Encoding.ASCII.GetString(
            DxfRewrite
                .Apply(
                    original,
                    DrawingUnit.Millimetre,
                    [
                        new DxfReplacement(
                            [shapes[1], shapes[2]],
                            "BLADE",
                            [new OverlayEdge(new Edge(new(1, 2), new(3, 4)))]
                        ),
                    ]
                )
                .Bytes
        );
        string expected = Drawn.File(
            Drawn.Circle(0, 0, 1, handle: "A1")
                + "  0\nLINE\n  5\nA4\n  8\nBLADE\n6\nDASHED\n62\n3\n370\n25\n"
                + " 10\n1.0\n 20\n2.0\n 30\n7.5\n 11\n3.0\n 21\n4.0\n 31\n7.5\n"
        );
        Assert.Equal(expected, rewritten);
    }

    [Theory]
    [InlineData("CIRCLE", "10\n0\n20\n0\n30\n-4\n40\n2\n210\n0\n220\n0\n230\n-1\n", 4)]
    [InlineData("LWPOLYLINE", "90\n2\n70\n0\n38\n4\n10\n0\n20\n0\n10\n5\n20\n0\n", 4)]
    [InlineData("LINE", "10\n0\n20\n0\n30\n4\n11\n1\n21\n1\n31\n4\n230\n-1\n", 4)]
    [InlineData(
        "POLYLINE",
        "66\n1\n10\n0\n20\n0\n30\n0\n70\n8\n0\nVERTEX\n8\nBLADE\n10\n0\n20\n0\n30\n4\n0\nVERTEX\n8\nBLADE\n10\n5\n20\n0\n30\n4\n0\nSEQEND\n",
        4
    )]
    public void The_height_is_that_of_the_drawing_whatever_the_entity_and_its_side(string type, string groups, double z)
    {
        byte[] original = Encoding.ASCII.GetBytes(Drawn.File(Drawn.Entity(type, "BLADE") + groups));
        DxfShape shape = Assert.Single(Drawing(original).Shapes);
        byte[] rewritten = DxfRewrite
            .Apply(
                original,
                DrawingUnit.Millimetre,
                [new DxfReplacement([shape], "BLADE", [new OverlayCircle(new Circle(new(0, 0), 1))])]
            )
            .Bytes;
        string wanted = string.Create(CultureInfo.InvariantCulture, $" 30\n{z:0.0}\n");
        Assert.Contains(wanted, Encoding.ASCII.GetString(rewritten), StringComparison.Ordinal);
    }

    [Fact]
    public void Comments_between_entities_stay()
    {
        byte[] original = Encoding.ASCII.GetBytes(
            Drawn.File("999\nfirst\n" + Drawn.Circle(0, 0, 1) + "999\nsecond\n" + Drawn.Circle(5, 0, 1))
        );
        byte[] rewritten = DxfRewrite
            .Apply(original, DrawingUnit.Millimetre, [DxfReplacement.LeavingOut(Drawing(original).Shapes[0])])
            .Bytes;
        Assert.Equal(
            Drawn.File("999\nfirst\n999\nsecond\n" + Drawn.Circle(5, 0, 1)),
            Encoding.ASCII.GetString(rewritten)
        );
    }

    [Fact]
    public void An_entity_named_twice_goes_once()
    {
        byte[] original = Encoding.ASCII.GetBytes(Drawn.File(Drawn.Circle(0, 0, 1) + Drawn.Circle(5, 0, 1)));
        DxfShape shape = Drawing(original).Shapes[0];
        byte[] rewritten = DxfRewrite
            .Apply(
                original,
                DrawingUnit.Millimetre,
                [
                    DxfReplacement.LeavingOut(shape, shape),
                    new DxfReplacement([shape], "BLADE", [new OverlayCircle(new Circle(new(7, 0), 2))]),
                ]
            )
            .Bytes;
        Assert.Equal([7.0, 5.0], Drawing(rewritten).Shapes.Select(one => ((FullCircle)one.Geometry).Circle.Centre.X));
    }

    [Fact]
    public void What_stands_in_a_block_is_left_with_a_sentence_and_its_replacement_is_not_made()
    {
        string block = "0\nBLOCK\n8\n0\n2\nS\n70\n0\n10\n0\n20\n0\n" + Drawn.Circle(0, 0, 1, "0", "B1") + "0\nENDBLK\n";
        string insert = Drawn.Entity("INSERT", "BLADE", "4A") + "2\nS\n10\n5\n20\n5\n";
        string loose = Drawn.Circle(1, 1, 1, handle: "4B");
        byte[] original = Encoding.ASCII.GetBytes(
            Drawn.Section("HEADER", Drawn.InMillimetres)
                + Drawn.Section("BLOCKS", block)
                + Drawn.Section("ENTITIES", insert + loose)
                + "0\nEOF\n"
        );
        DxfShape[] shapes = [.. Drawing(original).Shapes];
        Assert.Equal([true, false], shapes.Select(shape => shape.IsInBlock));

        DxfReplacement both = new([shapes[1], shapes[0]], "BLADE", [new OverlayEdge(Line)]);
        RewrittenDrawing rewritten = DxfRewrite.Apply(original, DrawingUnit.Millimetre, [both]);

        Assert.Equal(original, rewritten.Bytes);
        Assert.Same(both, Assert.Single(rewritten.Refused));
        DxfIssue issue = Assert.Single(rewritten.Issues);
        Assert.Equal(DxfIssueCodes.InBlock, issue.Code);
        Assert.StartsWith("CIRCLE 4A/B1 (line", issue.Sentence, StringComparison.Ordinal);
        Assert.EndsWith("explode the block first.", issue.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void What_still_names_an_entity_that_is_gone_is_told()
    {
        string hatch = Drawn.Entity("HATCH", "NOTES", "A9") + "97\n1\n330\n0a1\n";
        byte[] original = Encoding.ASCII.GetBytes(Drawn.File(Drawn.Circle(0, 0, 1, handle: "A1") + hatch));
        DxfIssue issue = Assert.Single(
            DxfRewrite
                .Apply(original, DrawingUnit.Millimetre, [DxfReplacement.LeavingOut(Drawing(original).Shapes[0])])
                .Issues
        );
        Assert.Equal(DxfIssueCodes.ReferenceLeft, issue.Code);
        Assert.Contains("to '0a1' in HATCH at line", issue.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_to_replace_leaves_the_bytes_as_they_are()
    {
        byte[] original = drawings.Bytes("basic_R2010_bin.dxf");
        Assert.Equal(original, DxfRewrite.Apply(original, DrawingUnit.Millimetre, []).Bytes);
    }

    [Fact]
    public void Coordinates_are_scaled_to_the_unit_of_the_drawing()
    {
        byte[] original = Encoding.ASCII.GetBytes(
            Drawn.File(Drawn.Circle(0, 0, 1), "9\n$ACADVER\n1\nAC1009\n9\n$INSUNITS\n70\n1\n")
        );
        byte[] rewritten = DxfRewrite
            .Apply(
                original,
                DrawingUnit.Inch,
                [new DxfReplacement([], "BLADE", [new OverlayCircle(new Circle(new(25.4, 0), 12.7))])]
            )
            .Bytes;
        JsonElement added = Marks.Entities(Referee.Dump(rewritten)).Last();
        AssertNear(new Point(1, 0), added.GetProperty("centre"));
        Assert.Equal(0.5, added.GetProperty("radius").GetDouble(), 1e-12);
    }

    [Fact]
    public void A_shape_of_another_file_a_layer_that_is_none_and_no_length_are_mistakes_of_the_caller()
    {
        byte[] original = Encoding.ASCII.GetBytes(Drawn.File(Drawn.Circle(0, 0, 1)));
        DxfShape shape = Drawing(original).Shapes[0];
        AssertRefused("holds no CIRCLE 7 (line 15)", DxfReplacement.LeavingOut(shape with { Handle = "7" }));
        AssertRefused("no layer 'NOWHERE'", new DxfReplacement([], "NOWHERE", [new OverlayEdge(Line)]));
        AssertRefused("is empty", new DxfReplacement([], "BLADE", [new OverlayEdge(new Edge(new(1, 1), new(1, 1)))]));

        void AssertRefused(string words, DxfReplacement replacement)
        {
            ArgumentException refused = Assert.Throws<ArgumentException>(() =>
                DxfRewrite.Apply(original, DrawingUnit.Millimetre, [replacement])
            );
            Assert.Contains(words, refused.Message, StringComparison.Ordinal);
        }
    }

    private static string HandleOf(JsonElement entity) => entity.GetProperty("handle").GetString()!;

    private static void AssertNear(Point expected, JsonElement xy)
    {
        Assert.Equal(expected.X, xy[0].GetDouble(), 1e-9);
        Assert.Equal(expected.Y, xy[1].GetDouble(), 1e-9);
    }

    private static DxfDrawing Drawing(byte[] file) =>
        Assert.IsType<DxfDrawing>(DxfReader.Read(file, new DxfReadOptions { Unit = DrawingUnit.Millimetre }).Drawing);
}
