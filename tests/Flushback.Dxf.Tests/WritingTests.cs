using System.Text.Json;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Dxf.Writing;
using Flushback.Geometry;

namespace Flushback.Dxf.Tests;

/// <summary>New drawings, read back by an independent reader and by our own.</summary>
public sealed class WritingTests
{
    public static TheoryData<DxfVersion, DrawingUnit, string> Forms =>
        new()
        {
            { DxfVersion.R12, DrawingUnit.Millimetre, "AC1009" },
            { DxfVersion.R12, DrawingUnit.Inch, "AC1009" },
            { DxfVersion.R2000, DrawingUnit.Millimetre, "AC1015" },
            { DxfVersion.R2000, DrawingUnit.Inch, "AC1015" },
            { DxfVersion.R2000, DrawingUnit.Metre, "AC1015" },
            { DxfVersion.R2007, DrawingUnit.Millimetre, "AC1021" },
            { DxfVersion.R2010, DrawingUnit.Millimetre, "AC1024" },
            { DxfVersion.R2013, DrawingUnit.Thou, "AC1027" },
            { DxfVersion.R2018, DrawingUnit.Inch, "AC1032" },
        };

    [Theory]
    [MemberData(nameof(Forms))]
    public void An_independent_reader_sees_exactly_what_was_written(DxfVersion version, DrawingUnit unit, string mark)
    {
        JsonElement dump = Referee.Dump(DxfWriter.Write(version, unit, Marks.Layers));
        Marks.AssertClean(dump);
        Assert.Equal(mark, dump.GetProperty("version").GetString());
        Assert.Equal((int)unit, dump.GetProperty("units").GetInt32());
        Marks.AssertSeen(dump, unit.Millimetres());
    }

    [Theory]
    [MemberData(nameof(Forms))]
    public void Our_own_reader_gets_every_number_back(DxfVersion version, DrawingUnit unit, string mark)
    {
        DxfReadResult result = DxfReader.Read(DxfWriter.Write(version, unit, Marks.Layers), DxfReadOptions.Default);
        DxfDrawing drawing = Assert.IsType<DxfDrawing>(result.Drawing);
        Assert.Equal((unit, mark), (drawing.Unit, drawing.VersionMark));
        Outline outline = Assert.IsType<ClosedOutline>(drawing.Shapes[0].Geometry).Outline;
        for (int i = 0; i < outline.Vertices.Length; i++)
        {
            Vertex expected = Marks.Shape.Vertices[i];
            Assert.True(
                expected.Position.IsWithin(
                    unit == DrawingUnit.Millimetre ? 0 : 1e-12 * 2100,
                    outline.Vertices[i].Position
                )
            );
            Assert.Equal(expected.Bulge, outline.Vertices[i].Bulge);
        }

        Assert.Equal(
            [DxfIssueCodes.EntityIgnored, DxfIssueCodes.EntityIgnored],
            result.Issues.Select(issue => issue.Code)
        );
    }

    [Theory]
    [InlineData("dxf", DxfVersion.R12)]
    [InlineData("dxf", DxfVersion.R2000)]
    [InlineData("dxf", DxfVersion.R2018)]
    [InlineData("dxf-parser", DxfVersion.R12)]
    [InlineData("dxf-parser", DxfVersion.R2000)]
    [InlineData("dxf-parser", DxfVersion.R2018)]
    public void Readers_in_browsers_see_the_same(string reader, DxfVersion version)
    {
        JsonElement dump = Referee.DumpByNode(reader, DxfWriter.Write(version, DrawingUnit.Inch, Marks.Layers));
        Assert.Equal((int)DrawingUnit.Inch, dump.GetProperty("units").GetInt32());
        Marks.AssertSeen(dump, DrawingUnit.Inch.Millimetres());
    }

    [Theory]
    [InlineData(DxfVersion.R12)]
    [InlineData(DxfVersion.R2000)]
    [InlineData(DxfVersion.R2018)]
    public void Words_may_end_at_their_place_or_have_it_in_their_middle(DxfVersion version)
    {
        OverlayLayer words = new(
            "FB_WORDS",
            1,
            [
                new OverlayText("ends here", new(5, 6), 2, TextAlignment.Right),
                new OverlayText("about here", new(-7, 8), 2, TextAlignment.Middle),
            ]
        );
        JsonElement dump = Referee.Dump(DxfWriter.Write(version, DrawingUnit.Millimetre, [words]));

        Marks.AssertClean(dump);
        Assert.Equal(
            [("ends here", 2, 5.0), ("about here", 1, -7.0)],
            dump.GetProperty("entities")
                .EnumerateArray()
                .Select(text =>
                    (
                        text.GetProperty("text").GetString(),
                        text.GetProperty("alignment").GetInt32(),
                        text.GetProperty("aligned")[0].GetDouble()
                    )
                )
        );
    }

    [Fact]
    public void The_same_layers_give_the_same_bytes() =>
        Assert.Equal(
            DxfWriter.Write(DxfVersion.R2000, DrawingUnit.Inch, Marks.Layers),
            DxfWriter.Write(DxfVersion.R2000, DrawingUnit.Inch, Marks.Layers)
        );

    [Fact]
    public void An_empty_drawing_is_a_drawing()
    {
        foreach (DxfVersion version in Enum.GetValues<DxfVersion>())
        {
            byte[] file = DxfWriter.Write(version, DrawingUnit.Millimetre, []);
            Marks.AssertClean(Referee.Dump(file));
            Assert.Empty(DxfReader.Read(file, DxfReadOptions.Default).Drawing!.Shapes);
        }
    }

    [Fact]
    public void What_no_reader_would_accept_is_not_written()
    {
        OverlayLayer[] unfit =
        [
            new("a name with blanks", 1, []),
            new("FB", 0, []),
            new("FB", 1, [new OverlayPoint(new Point(double.NaN, 0))]),
            new("FB", 1, [new OverlayCircle(new Circle(default, 0))]),
            new("FB", 1, [new OverlayPath([], IsClosed: false)]),
            new("FB", 1, [new OverlayText("x", default, double.PositiveInfinity)]),
        ];
        Assert.All(
            unfit,
            layer => Assert.Throws<ArgumentException>(() => DxfWriter.Write(DxfVersion.R12, DrawingUnit.Inch, [layer]))
        );
    }
}
