using CsCheck;
using Flushback.Dxf.Chaining;
using Flushback.Geometry;

namespace Flushback.Dxf.Tests;

/// <summary>Loose entities become contours, whatever their order and direction, and leftovers are named.</summary>
public sealed class ChainingTests
{
    /// <summary>A slot 30 long with round ends of radius 5: its area is 30 x 10 + 25 pi.</summary>
    private static readonly string[] Slot =
    [
        Drawn.Line(0, 0, 30, 0, handle: "A1"),
        Drawn.Arc(30, 5, 5, 270, 90, handle: "A2"),
        Drawn.Line(0, 10, 30, 10, handle: "A3"),
        Drawn.Arc(0, 5, 5, 90, 270, handle: "A4"),
    ];

    [Fact]
    public void Loose_lines_and_arcs_close_in_any_order()
    {
        Gen.Shuffle(Slot)
            .Sample(entities =>
            {
                ChainResult result = Chained(string.Concat(entities));
                Assert.Empty(result.Issues);
                Contour contour = Assert.Single(result.Contours);
                Assert.Equal(300 + (25 * Math.PI), contour.Outline.AreaMm2, 1e-9);
                Assert.Equal(["A1", "A2", "A3", "A4"], contour.Handles.Order(StringComparer.Ordinal));
                AssertIsJoined(contour.Outline);
            });
    }

    [Fact]
    public void The_first_entity_sets_where_the_contour_begins_and_which_way_it_runs()
    {
        Contour forward = Assert.Single(Chained(string.Concat(Slot)).Contours);
        Contour backward = Assert.Single(Chained(Slot[2] + Slot[0] + Slot[1] + Slot[3]).Contours);
        Assert.Equal(["A1", "A2", "A3", "A4"], forward.Handles.AsEnumerable());
        Assert.True(forward.Outline.IsCounterClockwise);
        Assert.Equal(["A3", "A2", "A1", "A4"], backward.Handles.AsEnumerable());
        Assert.False(backward.Outline.IsCounterClockwise);
    }

    [Fact]
    public void A_gap_within_the_tolerance_is_bridged_and_measured()
    {
        ChainResult result = Chained(Drawn.Line(0, 0, 30, 0.008, handle: "A1") + string.Concat(Slot[1..]));
        DxfIssue repair = Assert.Single(result.Issues);
        Assert.Equal((DxfIssueCodes.GapBridged, DxfIssueKind.Repair), (repair.Code, repair.Kind));
        Assert.Contains(
            "A gap of 0.008 mm between LINE A1 (line 15) and ARC A2 (line 29)",
            repair.Sentence,
            StringComparison.Ordinal
        );

        // A line's end was written down, an arc's computed: the line's end is where they meet.
        Outline outline = Assert.Single(result.Contours).Outline;
        AssertIsJoined(outline);
        Assert.Contains(new Vertex(30, 0.008, Math.Tan(Math.PI / 4)), outline.Vertices);
    }

    [Fact]
    public void Two_lines_meet_in_the_middle_of_their_gap()
    {
        string entities = Drawn.Line(0, 0, 10, 0) + Drawn.Line(10.004, 0, 10, 10) + Drawn.Line(10, 10, 0, 0);
        Outline outline = Assert.Single(Chained(entities).Contours).Outline;
        Assert.Equal(10.002, outline.Edges[0].End.X, 1e-12);
        AssertIsJoined(outline);
    }

    [Fact]
    public void A_gap_beyond_the_tolerance_is_an_error_with_both_ends_and_the_gap()
    {
        ChainResult result = Chained(Drawn.Line(0, 0, 29.95, 0, handle: "A1") + string.Concat(Slot[1..]));
        DxfIssue error = Assert.Single(result.Issues);
        Assert.Equal((DxfIssueCodes.OpenChain, DxfIssueKind.Error), (error.Code, error.Kind));
        Assert.Contains("4 joined entities", error.Sentence, StringComparison.Ordinal);
        Assert.Contains("(30, 0) and (29.95, 0) mm, 0.05 mm apart", error.Sentence, StringComparison.Ordinal);
        Assert.Empty(result.Contours);
    }

    [Fact]
    public void Two_open_halves_name_the_gaps_between_them()
    {
        ChainResult result = Chained(Drawn.Line(0.2, 0, 29.9, 0, handle: "A1") + string.Concat(Slot[1..]));
        Assert.Equal(2, result.Issues.Length);
        Assert.Contains("the first is 0.2 mm from ARC A4", result.Issues[0].Sentence, StringComparison.Ordinal);
        Assert.Contains("the second is 0.1 mm from ARC A2", result.Issues[0].Sentence, StringComparison.Ordinal);
    }

    [Fact]
    public void Where_three_ends_meet_the_handles_are_named()
    {
        ChainResult result = Chained(string.Concat(Slot) + Drawn.Line(0, 0, -7, -7, handle: "B1"));
        DxfIssue error = Assert.Single(result.Issues);
        Assert.Equal((DxfIssueCodes.BranchPoint, DxfIssueKind.Error), (error.Code, error.Kind));
        Assert.Contains("3 ends meet at (0, 0) mm on layer BLADE", error.Sentence, StringComparison.Ordinal);
        Assert.All(
            ["LINE A1", "ARC A4", "LINE B1"],
            name => Assert.Contains(name, error.Sentence, StringComparison.Ordinal)
        );
    }

    [Fact]
    public void A_loose_end_beside_a_joint_is_a_branch_too()
    {
        ChainResult result = Chained(string.Concat(Slot) + Drawn.Line(0.004, 0.003, -7, -7, handle: "B1"));
        Assert.Equal(DxfIssueCodes.BranchPoint, Assert.Single(result.Issues).Code);
        Assert.Single(result.Contours);
    }

    [Theory]
    [InlineData(0, 0, 30, 0)]
    [InlineData(30, 0, 0, 0)]
    [InlineData(0, 0.001, 30, -0.002)]
    public void A_second_copy_of_a_line_is_left_out_whichever_way_it_was_drawn(
        double x1,
        double y1,
        double x2,
        double y2
    )
    {
        ChainResult result = Chained(string.Concat(Slot) + Drawn.Line(x1, y1, x2, y2, handle: "B1"));
        DxfIssue repair = Assert.Single(result.Issues);
        Assert.Equal((DxfIssueCodes.Duplicate, DxfIssueKind.Repair, "B1"), (repair.Code, repair.Kind, repair.Handle));
        Assert.Single(result.Contours);
    }

    [Fact]
    public void Second_copies_of_circles_and_polylines_are_left_out()
    {
        string entities =
            Drawn.Circle(1, 2, 3)
            + Drawn.Circle(1, 2, 3)
            + Drawn.Circle(1, 2, 4)
            + Drawn.Polyline(true, "BLADE", (0, 0, 0.5), (8, 0, 0), (8, 6, 0))
            + Drawn.Polyline(true, "BLADE", (8, 6, 0), (8, 0, -0.5), (0, 0, 0));
        ChainResult result = Chained(entities);
        Assert.Equal([3, 4], result.Circles.Select(shape => shape.Circle.RadiusMm));
        Assert.Single(result.Contours);
        Assert.Equal([DxfIssueCodes.Duplicate, DxfIssueCodes.Duplicate], result.Issues.Select(issue => issue.Code));
    }

    public static TheoryData<string, string> SlotsWithOverlaps =>
        new()
        {
            {
                Drawn.Line(0, 0, 20, 0, handle: "A1")
                    + Drawn.Line(30, 0, 12, 0, handle: "B1")
                    + string.Concat(Slot[1..]),
                "B1"
            },
            { string.Concat(Slot) + Drawn.Line(8, 10, 3, 10, handle: "B1"), "B1" },
            {
                string.Concat(Slot) + Drawn.Line(0, 0, 11, 0, handle: "B1") + Drawn.Line(11, 0, 30, 0, handle: "B2"),
                "B1,B2"
            },
            { string.Concat(Slot) + Drawn.Arc(30, 5, 5, 300, 40, handle: "B1"), "B1" },
            {
                Slot[0]
                    + Drawn.Arc(30, 5, 5, 270, 30, handle: "A2")
                    + Drawn.Arc(30, 5, 5, 10, 90, handle: "B1")
                    + Slot[2]
                    + Slot[3],
                "B1"
            },
            {
                Slot[0]
                    + Drawn.Arc(30, 5, 5, 10, 90, handle: "A2")
                    + Drawn.Arc(30, 5, 5, 270, 30, handle: "B1")
                    + Slot[2]
                    + Slot[3],
                "B1"
            },
        };

    [Theory]
    [MemberData(nameof(SlotsWithOverlaps))]
    public void Lines_and_arcs_that_lie_partly_on_each_other_become_one(string entities, string gone)
    {
        ChainResult result = Chained(entities);
        Assert.All(
            result.Issues,
            issue => Assert.Equal((DxfIssueCodes.Overlap, DxfIssueKind.Repair), (issue.Code, issue.Kind))
        );
        Assert.Equal(gone.Split(','), result.Issues.Select(issue => issue.Handle));
        Outline outline = Assert.Single(result.Contours).Outline;
        Assert.Equal(300 + (25 * Math.PI), outline.AreaMm2, 1e-9);
        Assert.Equal(4, outline.Edges.Length);
    }

    [Fact]
    public void A_line_of_no_length_is_removed_and_said_so()
    {
        var read = Drawn.Read(Drawn.File(string.Concat(Slot) + Drawn.Line(30, 0, 30, 0, handle: "B1")));
        DxfIssue repair = Assert.Single(read.Issues);
        Assert.Equal((DxfIssueCodes.ZeroLength, DxfIssueKind.Repair, "B1"), (repair.Code, repair.Kind, repair.Handle));
        Assert.Empty(DxfContours.ContoursOf(read.Drawing!, "BLADE", 0.01).Issues);
    }

    [Fact]
    public void A_short_edge_that_fits_exactly_is_kept()
    {
        string entities =
            Drawn.Line(0, 0, 30, 0)
            + Drawn.Line(30, 0, 30.005, 0)
            + Drawn.Line(30.005, 0, 0, 10)
            + Drawn.Line(0, 10, 0, 0);
        ChainResult result = Chained(entities);
        Assert.Empty(result.Issues);
        Assert.Equal(4, Assert.Single(result.Contours).Outline.Edges.Length);
    }

    [Fact]
    public void A_speck_beside_a_gap_is_left_out_and_said_so()
    {
        string entities =
            Drawn.Line(0, 0, 30, 0)
            + Drawn.Line(30.002, 0.001, 30.004, 0.001, handle: "B1")
            + Drawn.Line(30.004, 0, 0, 10)
            + Drawn.Line(0, 10, 0, 0);
        ChainResult result = Chained(entities);
        Assert.Equal([DxfIssueCodes.ZeroLength, DxfIssueCodes.GapBridged], result.Issues.Select(issue => issue.Code));
        Assert.Equal(3, Assert.Single(result.Contours).Outline.Edges.Length);
    }

    [Fact]
    public void Two_half_circles_are_a_circle()
    {
        ChainResult result = Chained(
            Drawn.Arc(3, 4, 2, 0, 180, handle: "A") + Drawn.Arc(3, 4, 2, 180, 360, handle: "B")
        );
        CircleShape shape = Assert.Single(result.Circles);
        Assert.Equal(2, shape.Circle.RadiusMm, 1e-12);
        Assert.True(shape.Circle.Centre.IsWithin(1e-12, new Point(3, 4)));
        Assert.Equal(["A", "B"], shape.Handles.AsEnumerable());
        Assert.Empty(result.Contours);
    }

    [Fact]
    public void An_arc_that_all_but_closes_on_itself_is_closed()
    {
        ChainResult result = Chained(Drawn.Arc(0, 0, 5, 0, 359.95));
        Assert.Equal(DxfIssueCodes.GapBridged, Assert.Single(result.Issues).Code);
        Assert.Equal(5, Assert.Single(result.Circles).Circle.RadiusMm, 0.01);
    }

    [Fact]
    public void An_open_polyline_joins_with_a_line()
    {
        string entities =
            Drawn.Polyline(false, "BLADE", (0, 0, 0), (8, 0, 0.4), (8, 6, 0)) + Drawn.Line(0, 0, 8, 6, handle: "B1");
        Contour contour = Assert.Single(Chained(entities).Contours);
        Assert.Equal(
            [new Vertex(0, 0), new Vertex(8, 0, 0.4), new Vertex(8, 6)],
            contour.Outline.Vertices.AsEnumerable()
        );
        Assert.Equal(["2F", "B1"], contour.Handles.AsEnumerable());
    }

    [Fact]
    public void Only_the_layer_asked_for_is_joined()
    {
        string entities = string.Concat(Slot) + Drawn.Line(0, 0, -7, -7, "SPRING");
        Assert.Empty(Chained(entities).Issues);
    }

    [Fact]
    public void An_absent_an_empty_and_a_hidden_layer_give_a_notice()
    {
        string tables =
            "0\nTABLE\n2\nLAYER\n70\n1\n0\nLAYER\n2\nOFF\n70\n0\n62\n-7\n0\nLAYER\n2\nBARE\n70\n0\n62\n7\n0\nENDTAB\n";
        var drawing = Drawn.Drawing(Drawn.File(Drawn.Line(0, 0, 1, 1, "OFF") + Drawn.Circle(0, 0, 1), tables: tables));
        foreach (
            (string layer, string words) in new[]
            {
                ("NONE", "no layer NONE; its layers are OFF, BARE, BLADE"),
                ("off", "Layer OFF is off"),
                ("BARE", "holds no lines"),
            }
        )
        {
            ChainResult result = DxfContours.ContoursOf(drawing, layer, 0.01);
            DxfIssue notice = Assert.Single(result.Issues);
            Assert.Equal(DxfIssueKind.Notice, notice.Kind);
            Assert.Contains(words, notice.Sentence, StringComparison.Ordinal);
        }
    }

    [Fact]
    public void A_crowd_of_ends_in_one_place_does_not_slow_the_search()
    {
        // 50,000 lines from one point: comparing every end with every other there would take minutes.
        string fan = string.Concat(
            Enumerable.Range(0, 50_000).Select(i => Drawn.Line(0, 0, 9000 * Math.Cos(i), 9000 * Math.Sin(i)))
        );
        ProcessorTime clock = ProcessorTime.OfThisThread();
        ChainResult result = Chained(fan);
        Assert.Contains(result.Issues, issue => issue.Code == DxfIssueCodes.BranchPoint);
        Assert.InRange(clock.Spent, TimeSpan.Zero, TimeSpan.FromSeconds(20));
    }

    private static ChainResult Chained(string entities) =>
        DxfContours.ContoursOf(Drawn.Drawing(Drawn.File(entities)), "BLADE", 0.01);

    private static void AssertIsJoined(Outline outline)
    {
        for (int i = 0; i < outline.Edges.Length; i++)
        {
            Assert.Equal(outline.Edges[i].End, outline.Edges[(i + 1) % outline.Edges.Length].Start);
            Assert.True(outline.Edges[i].LengthMm > 0);
        }
    }
}
