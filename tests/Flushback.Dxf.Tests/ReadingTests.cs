using Flushback.Dxf.Drawings;
using Flushback.Geometry;

namespace Flushback.Dxf.Tests;

/// <summary>Entities, units and layers, against values worked out by hand.</summary>
public sealed class ReadingTests
{
    [Fact]
    public void A_line_keeps_its_end_points_to_the_last_digit()
    {
        DxfShape shape = Assert.Single(
            Drawn.Drawing(Drawn.File(Drawn.Line(0.1, 1.0 / 3, -2e-7, 12345.6789, handle: "1a"))).Shapes
        );
        Edge edge = Assert.Single(Assert.IsType<OpenChain>(shape.Geometry).Edges);
        Assert.Equal(new Edge(new Point(0.1, 1.0 / 3), new Point(-2e-7, 12345.6789)), edge);
        Assert.Equal("1A", shape.Handle);
        Assert.Equal("BLADE", shape.Layer);
        Assert.Equal("LINE", shape.TypeName);
    }

    [Fact]
    public void A_quarter_arc_ends_exactly_on_the_axes()
    {
        Edge edge = OnlyEdge(Drawn.Arc(10, 20, 5, 90, 180));
        Assert.Equal(new Point(10, 25), edge.Start);
        Assert.Equal(new Point(5, 20), edge.End);
        // Bulge is the tangent of a quarter of the included angle: tan(22.5 degrees) = sqrt(2) - 1.
        Assert.Equal(Math.Sqrt(2) - 1, edge.Bulge, 1e-15);
    }

    [Theory]
    [InlineData(350, 10, 20)]
    [InlineData(-10, 10, 20)]
    [InlineData(10, 350, 340)]
    [InlineData(730, 380, 10)]
    public void An_arc_runs_counter_clockwise_whatever_turns_its_angles_count(double from, double to, double sweep) =>
        Assert.Equal(sweep, OnlyEdge(Drawn.Arc(0, 0, 5, from, to)).Sweep.Degrees, 1e-10);

    [Fact]
    public void An_arc_of_a_whole_turn_is_a_circle()
    {
        DxfShape shape = Assert.Single(Drawn.Drawing(Drawn.File(Drawn.Arc(1, 2, 3, 0, 360))).Shapes);
        Assert.Equal(new Circle(new Point(1, 2), 3), Assert.IsType<FullCircle>(shape.Geometry).Circle);
    }

    [Fact]
    public void Two_vertices_with_half_bulges_close_to_a_disc()
    {
        string file = Drawn.File(Drawn.Polyline(isClosed: true, "BLADE", (0, 0, 1), (10, 0, 1)));
        Outline outline = OnlyOutline(file);
        // The format's reference: a bulge of 1 is a half circle, so this is a disc of radius 5.
        Assert.Equal(Math.PI * 25, outline.AreaMm2, 1e-12);
    }

    [Fact]
    public void A_polyline_seen_from_behind_is_mirrored_and_its_bulges_change_sign()
    {
        string polyline =
            Drawn.Polyline(isClosed: true, "BLADE", (0, 0, 0.5), (10, 0, 0), (10, 5, 0))
            + Drawn.Groups((210, 0), (220, 0), (230, -1));
        Outline outline = OnlyOutline(Drawn.File(polyline));
        Assert.Equal([new Vertex(0, 0, -0.5), new Vertex(-10, 0), new Vertex(-10, 5)], outline.Vertices.AsEnumerable());
    }

    [Fact]
    public void An_arc_seen_from_behind_is_mirrored_about_the_y_axis()
    {
        // (10, 5), 0 to 90 degrees, becomes (-10, 5), 90 to 180 degrees, by the format's arbitrary axis rule.
        Edge edge = OnlyEdge(Drawn.Arc(10, 5, 2, 0, 90) + Drawn.Groups((210, 0), (220, 0), (230, -1)));
        Assert.Equal(new Point(-12, 5), edge.Start);
        Assert.Equal(new Point(-10, 7), edge.End);
        Assert.Equal(new Point(-10, 5), Rounded(edge.Centre));
    }

    [Fact]
    public void An_old_polyline_reads_like_a_new_one()
    {
        string heavy =
            Drawn.Entity("POLYLINE", "BLADE", "A1")
            + "66\n1\n70\n1\n"
            + Drawn.Entity("VERTEX", "BLADE")
            + Drawn.Groups((10, 0), (20, 0), (42, 0.25))
            + Drawn.Entity("VERTEX", "BLADE")
            + Drawn.Groups((10, 8), (20, 0))
            + Drawn.Entity("VERTEX", "BLADE")
            + Drawn.Groups((10, 8), (20, 6))
            + Drawn.Entity("SEQEND", "BLADE");
        string light = Drawn.Polyline(isClosed: true, "BLADE", (0, 0, 0.25), (8, 0, 0), (8, 6, 0));
        Assert.Equal(
            OnlyOutline(Drawn.File(light)).Edges.AsEnumerable(),
            OnlyOutline(Drawn.File(heavy)).Edges.AsEnumerable()
        );
    }

    [Fact]
    public void A_repeated_vertex_is_removed_and_said_so()
    {
        var result = Drawn.Read(
            Drawn.File(Drawn.Polyline(isClosed: true, "BLADE", (0, 0, 0), (8, 0, 0), (8, 0, 0.3), (8, 6, 0), (0, 0, 0)))
        );
        Outline outline = Assert.IsType<ClosedOutline>(Assert.Single(result.Drawing!.Shapes).Geometry).Outline;
        Assert.Equal([new Vertex(0, 0), new Vertex(8, 0, 0.3), new Vertex(8, 6)], outline.Vertices.AsEnumerable());
        Assert.Equal(
            2,
            result.Issues.Count(issue =>
                issue is { Code: DxfIssueCodes.ZeroLength, Kind: DxfIssueKind.Repair, Handle: "2F" }
            )
        );
    }

    [Theory]
    [InlineData(1, 25.4)]
    [InlineData(2, 304.8)]
    [InlineData(4, 1)]
    [InlineData(5, 10)]
    [InlineData(6, 1000)]
    [InlineData(8, 25.4e-6)]
    [InlineData(9, 0.0254)]
    [InlineData(13, 0.001)]
    [InlineData(14, 100)]
    public void The_stated_unit_makes_millimetres(int insUnits, double millimetres)
    {
        // Values of $INSUNITS by the format's public reference.
        DxfDrawing drawing = Drawn.Drawing(Drawn.File(Drawn.Circle(1, 2, 3), $"9\n$INSUNITS\n70\n{insUnits}\n"));
        Circle circle = Assert.IsType<FullCircle>(Assert.Single(drawing.Shapes).Geometry).Circle;
        Assert.Equal(3 * millimetres, circle.RadiusMm, 1e-12 * millimetres);
        Assert.Equal(2 * millimetres, circle.Centre.Y, 1e-12 * millimetres);
    }

    [Fact]
    public void Without_insunits_the_measurement_decides_and_that_is_said()
    {
        var result = Drawn.Read(Drawn.File(Drawn.Line(0, 0, 4, 2), "9\n$INSUNITS\n70\n0\n9\n$MEASUREMENT\n70\n0\n"));
        Assert.Equal(DrawingUnit.Inch, result.Drawing!.Unit);
        DxfIssue notice = Assert.Single(result.Issues);
        Assert.Equal((DxfIssueCodes.UnitFromMeasurement, DxfIssueKind.Notice), (notice.Code, notice.Kind));
        Assert.Contains("101.6 x 50.8 mm (4 x 2 in)", notice.Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void The_callers_unit_goes_over_the_drawings_and_that_is_said()
    {
        var result = Drawn.Read(Drawn.File(Drawn.Circle(0, 0, 1)), DrawingUnit.Inch);
        Assert.Equal(25.4, Assert.IsType<FullCircle>(Assert.Single(result.Drawing!.Shapes).Geometry).Circle.RadiusMm);
        Assert.Equal(DxfIssueCodes.UnitOverridden, Assert.Single(result.Issues).Code);
    }

    [Fact]
    public void Layers_that_are_off_or_frozen_and_paper_space_are_left_out_with_a_notice()
    {
        string tables =
            "0\nTABLE\n2\nLAYER\n70\n2\n0\nLAYER\n2\nOFF\n70\n0\n62\n-7\n6\nCONTINUOUS\n"
            + "0\nLAYER\n2\nICE\n70\n1\n62\n7\n6\nCONTINUOUS\n0\nENDTAB\n";
        string entities =
            Drawn.Line(0, 0, 1, 0, "OFF")
            + Drawn.Line(0, 0, 1, 0, "ice")
            + Drawn.Line(0, 0, 1, 0, "SHEET")
            + "67\n1\n"
            + Drawn.Circle(0, 0, 1);
        var result = Drawn.Read(Drawn.File(entities, tables: tables));
        Assert.Equal("CIRCLE", Assert.Single(result.Drawing!.Shapes).TypeName);
        Assert.Equal(
            [DxfIssueCodes.LayerHidden, DxfIssueCodes.LayerHidden, DxfIssueCodes.PaperSpace],
            result.Issues.Select(issue => issue.Code)
        );
        Assert.False(result.Drawing.FindLayer("off")!.IsOn);
        Assert.True(result.Drawing.FindLayer("Ice")!.IsFrozen);
    }

    [Fact]
    public void Texts_are_counted_by_layer_and_left_out()
    {
        string text = Drawn.Entity("TEXT", "BLADE") + Drawn.Groups((10, 0), (20, 0), (40, 2)) + "1\nblade\n";
        DxfIssue notice = Assert.Single(Drawn.Read(Drawn.File(text + text + Drawn.Circle(0, 0, 1))).Issues);
        Assert.Equal(
            (DxfIssueCodes.EntityIgnored, DxfIssueKind.Notice, "BLADE"),
            (notice.Code, notice.Kind, notice.Layer)
        );
        Assert.StartsWith("2 TEXT entities on layer BLADE are no outlines", notice.Sentence, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    [InlineData("\r")]
    public void Any_line_ending_reads_the_same(string ending)
    {
        string file = Drawn
            .File("999\na comment\n" + Drawn.Line(1, 2, 3, 4))
            .Replace("\n", ending, StringComparison.Ordinal);
        Assert.Single(Drawn.Drawing("\uFEFF" + file).Shapes);
    }

    [Fact]
    public void Padded_codes_and_values_read_the_same()
    {
        string file = Drawn
            .File(Drawn.Line(1, 2, 3, 4))
            .Replace("\n10\n1\n", "\n 10 \n   1.0E+00 \n", StringComparison.Ordinal);
        Assert.Equal(new Point(1, 2), OnlyEdgeOf(file).Start);
    }

    private static Edge OnlyEdge(string entity) => OnlyEdgeOf(Drawn.File(entity));

    private static Edge OnlyEdgeOf(string file) =>
        Assert.Single(Assert.IsType<OpenChain>(Assert.Single(Drawn.Drawing(file).Shapes).Geometry).Edges);

    private static Outline OnlyOutline(string file) =>
        Assert.IsType<ClosedOutline>(Assert.Single(Drawn.Drawing(file).Shapes).Geometry).Outline;

    private static Point Rounded(Point p) => new(Math.Round(p.X, 12), Math.Round(p.Y, 12));
}
