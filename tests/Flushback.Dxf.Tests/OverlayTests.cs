using System.Text;
using System.Text.Json;
using Flushback.Dxf.Reading;
using Flushback.Dxf.Writing;

namespace Flushback.Dxf.Tests;

/// <summary>Our layers over the user's file: an independent reader sees both, and the user's part is untouched.</summary>
public sealed class OverlayTests(EzdxfDrawings drawings) : IClassFixture<EzdxfDrawings>
{
    [Theory]
    [MemberData(nameof(EzdxfDrawings.AllFiles), MemberType = typeof(EzdxfDrawings))]
    public void The_users_drawing_stays_and_ours_is_beside_it(string name)
    {
        byte[] original = drawings.Bytes(name);
        JsonElement before = Referee.Dump(original);
        JsonElement after = Referee.Dump(DxfOverlay.AddTo(original, DrawingUnit.Millimetre, Marks.Layers));

        Marks.AssertClean(after);
        Marks.AssertSeen(after, 1);
        Assert.Equal(
            Marks.Entities(before).Select(e => e.GetRawText()),
            Marks.Entities(after).Select(e => e.GetRawText()).Take(Marks.Entities(before).Count())
        );
        Assert.Equal(before.GetProperty("blocks").GetRawText(), after.GetProperty("blocks").GetRawText());
        Assert.Equal(
            before.GetProperty("layers").EnumerateArray().Select(l => l.GetRawText()),
            after.GetProperty("layers").EnumerateArray().SkipLast(2).Select(l => l.GetRawText())
        );
    }

    [Theory]
    [MemberData(nameof(EzdxfDrawings.TextFiles), MemberType = typeof(EzdxfDrawings))]
    public void Every_line_of_the_original_is_still_there_in_its_order(string name)
    {
        byte[] original = drawings.Bytes(name);
        List<string> before = [.. LinesOf(original)];
        Queue<string> after = new(LinesOf(DxfOverlay.AddTo(original, DrawingUnit.Millimetre, Marks.Layers)));

        // Only the handle seed and the count of layers may differ.
        int seed = before.FindIndex(line => line.Trim() == "$HANDSEED") + 2;
        int layers = before.FindIndex(line => line.Trim() == "LAYER");
        int count = before.FindIndex(layers, line => line.Trim() == "70") + 1;
        foreach (string line in before.Where((_, i) => i != seed && i != count))
        {
            string? next;
            while (after.TryDequeue(out next) && next != line) { }

            Assert.Equal(line, next);
        }
    }

    private static string[] LinesOf(byte[] file) => Encoding.UTF8.GetString(file).Split('\n');

    [Theory]
    [MemberData(nameof(EzdxfDrawings.TextFiles), MemberType = typeof(EzdxfDrawings))]
    public void New_handles_are_unique_and_the_seed_lies_above_them(string name)
    {
        byte[] overlaid = DxfOverlay.AddTo(drawings.Bytes(name), DrawingUnit.Millimetre, Marks.Layers);
        Handles.AssertUniqueBelowTheSeed(overlaid);
    }

    [Fact]
    public void Coordinates_are_scaled_to_the_unit_of_the_drawing()
    {
        byte[] original = Encoding.ASCII.GetBytes(
            Drawn.File(Drawn.Circle(0, 0, 1), "9\n$ACADVER\n1\nAC1009\n9\n$INSUNITS\n70\n1\n")
        );
        JsonElement after = Referee.Dump(DxfOverlay.AddTo(original, DrawingUnit.Inch, Marks.Layers));
        Marks.AssertSeen(after, 25.4);
    }

    [Theory]
    [InlineData("")]
    [InlineData("0\nTABLE\n2\nVIEW\n70\n0\n0\nENDTAB\n")]
    public void A_file_without_layers_gets_a_table_of_them(string tables)
    {
        byte[] original = Encoding.ASCII.GetBytes(Drawn.File(Drawn.Circle(0, 0, 1), header: "", tables: tables));
        JsonElement after = Referee.Dump(DxfOverlay.AddTo(original, DrawingUnit.Millimetre, Marks.Layers));
        Marks.AssertClean(after);
        Marks.AssertSeen(after, 1);
    }

    [Fact]
    public void A_second_overlay_uses_the_layers_that_are_there()
    {
        byte[] once = DxfOverlay.AddTo(drawings.Bytes("basic_R2010_asc.dxf"), DrawingUnit.Millimetre, Marks.Layers);
        JsonElement twice = Referee.Dump(DxfOverlay.AddTo(once, DrawingUnit.Millimetre, Marks.Layers));
        Marks.AssertClean(twice);
        Assert.Equal(
            2,
            twice
                .GetProperty("layers")
                .EnumerateArray()
                .Count(l => l.GetProperty("name").GetString()!.StartsWith("FB_", StringComparison.Ordinal))
        );
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void The_line_ending_of_the_file_is_kept(string ending)
    {
        string original = Drawn.File(Drawn.Circle(0, 0, 1)).Replace("\n", ending, StringComparison.Ordinal);
        string overlaid = Encoding.UTF8.GetString(
            DxfOverlay.AddTo(Encoding.ASCII.GetBytes(original), DrawingUnit.Millimetre, Marks.Layers)
        );
        string foreign = overlaid.Replace(ending, "", StringComparison.Ordinal);
        Assert.DoesNotContain('\n', foreign);
        Assert.DoesNotContain('\r', foreign);
    }

    [Fact]
    public void Nothing_to_add_leaves_the_bytes_as_they_are()
    {
        byte[] original = Encoding.ASCII.GetBytes(Drawn.File(Drawn.Circle(0, 0, 1)));
        Assert.Equal(original, DxfOverlay.AddTo(original, DrawingUnit.Millimetre, []));
    }

    [Fact]
    public void A_file_that_cannot_be_read_cannot_be_drawn_over()
    {
        ArgumentException refused = Assert.Throws<ArgumentException>(() =>
            DxfOverlay.AddTo("no drawing"u8.ToArray(), DrawingUnit.Inch, Marks.Layers)
        );
        Assert.Contains("no DXF file", refused.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void What_was_added_reads_back_as_it_was()
    {
        byte[] overlaid = DxfOverlay.AddTo(drawings.Bytes("basic_R2018_bin.dxf"), DrawingUnit.Millimetre, Marks.Layers);
        var drawing = DxfReader.Read(overlaid, DxfReadOptions.Default).Drawing!;
        var contour = Assert.Single(
            Chaining
                .DxfContours.ContoursOf(
                    new Drawings.DxfDrawing
                    {
                        Unit = drawing.Unit,
                        Layers = drawing.Layers,
                        Shapes = [drawing.ShapesOn("FB_CONTACTS").First()],
                    },
                    "FB_CONTACTS",
                    0
                )
                .Contours
        );
        Assert.Equal(Marks.Shape.Vertices.AsEnumerable(), contour.Outline.Vertices.AsEnumerable());
    }
}
