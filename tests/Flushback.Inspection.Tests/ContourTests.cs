using Flushback.Geometry;

namespace Flushback.Inspection.Tests;

/// <summary>Contours that close or do not, and what is wrong with their entities.</summary>
public sealed class ContourTests
{
    private static string Square(double lastX = 0, double lastY = 0) =>
        Sheet.Line(0, 0, 30, 0, "A1")
        + Sheet.Line(30, 0, 30, 20, "A2")
        + Sheet.Line(30, 20, 0, 20, "A3")
        + Sheet.Line(0, 20, lastX, lastY, "A4");

    [Fact]
    public void A_sound_part_with_a_hole_has_no_findings_and_its_areas_and_lengths()
    {
        InspectionReport report = Sheet.Inspect(Square() + Sheet.Circle(15, 10, 4, "A5"));
        Assert.Empty(report.Findings);
        Assert.True(report.IsClean);
        InspectedPart part = Assert.Single(report.Parts);
        InspectedHole hole = Assert.Single(part.Holes);
        Assert.Equal(["A1", "A2", "A3", "A4"], part.Handles.Order(StringComparer.Ordinal));
        Assert.Equal(["A5"], hole.Handles.AsEnumerable());
        Assert.Equal(600 - (16 * Math.PI), part.AreaMm2, 1e-9);
        Assert.Equal(100 + (8 * Math.PI), part.CutLengthMm, 1e-9);
        Assert.Equal(100 + (8 * Math.PI), report.CutLengthMm, 1e-9);
        Assert.Equal(new Box(0, 0, 30, 20), report.Bounds);
        Assert.Equal(["CUT"], report.CutLayers.AsEnumerable());
    }

    [Fact]
    public void A_contour_that_does_not_close_is_a_fault_with_both_ends()
    {
        InspectionReport report = Sheet.Inspect(
            Square()[..Square().IndexOf(Sheet.Line(0, 20, 0, 0, "A4"), StringComparison.Ordinal)]
        );
        InspectionFinding finding = report.Single(InspectionCodes.OpenContour);
        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.Equal(["A1", "A2", "A3"], finding.Handles.AsEnumerable());
        Assert.Equal("CUT", finding.Layer);
        Assert.Equal(20, finding.Value!.Value, 1e-12);
        Assert.Equal(0.01, finding.Limit);
        OpenContour open = Assert.Single(report.OpenContours);
        Assert.Equal((new Point(0, 0), new Point(0, 20)), (open.Start, open.End));
        Assert.Equal(80, open.LengthMm, 1e-12);
        report.HasNo(InspectionCodes.Gap);
        Assert.Empty(report.Parts);
    }

    [Theory]
    [InlineData(0.009, true)]
    [InlineData(0.011, false)]
    public void A_gap_is_bridged_up_to_the_tolerance_and_measured_either_way(double gap, bool isBridged)
    {
        InspectionReport report = Sheet.Inspect(Square(gap));
        InspectionFinding finding = report.Single(InspectionCodes.Gap);
        Assert.Equal(isBridged ? Severity.Warning : Severity.Fault, finding.Severity);
        Assert.Equal(gap, finding.Value!.Value, 1e-9);
        Assert.Equal(0.01, finding.Limit);
        Assert.Equal(["A1", "A4"], finding.Handles.Order(StringComparer.Ordinal));
        Assert.Equal(isBridged ? 1 : 0, report.Parts.Length);
        Assert.Equal(isBridged ? 0 : 1, report.OpenContours.Length);
    }

    [Fact]
    public void A_bridged_gap_of_rounding_is_only_a_note()
    {
        Assert.Equal(Severity.Note, Sheet.Inspect(Square(0.0009)).Single(InspectionCodes.Gap).Severity);
        Sheet.Inspect(Square(0.0000009)).HasNo(InspectionCodes.Gap);
    }

    [Fact]
    public void Ends_on_two_layers_are_told_apart()
    {
        string entities = Square()[..Square().IndexOf(Sheet.Line(0, 20, 0, 0, "A4"), StringComparison.Ordinal)];
        InspectionReport report = Sheet.Inspect(entities + Sheet.Line(0, 20.5, 0, 5, "A4", "OTHER"));
        InspectionFinding gap = report.Single(InspectionCodes.Gap);
        Assert.Equal(0.5, gap.Value!.Value, 1e-12);
        Assert.Contains("OTHER", gap.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Three_ends_in_one_point_are_a_branch()
    {
        InspectionReport report = Sheet.Inspect(Square() + Sheet.Line(30, 20, 40, 30, "A5"));
        InspectionFinding finding = report.Single(InspectionCodes.BranchPoint);
        Assert.Equal(["A2", "A3", "A5"], finding.Handles.Order(StringComparer.Ordinal));
        Assert.Equal((3.0, 2.0), (finding.Value, finding.Limit));
        Assert.Equal(new Point(30, 20), finding.At);
    }

    [Fact]
    public void An_edge_of_no_length_a_copy_and_an_overlap_are_each_told()
    {
        InspectionReport report = Sheet.Inspect(
            Square()
                + Sheet.Line(5, 0, 5, 0, "B1")
                + Sheet.Line(30, 20, 30, 0, "B2")
                + Sheet.Line(10, 20, -0.0, 20, "B3")
        );
        Assert.Equal(["B1"], report.Single(InspectionCodes.ZeroLength).Handles.AsEnumerable());
        Assert.Equal(["A2", "B2"], report.Single(InspectionCodes.Duplicate).Handles.AsEnumerable());
        InspectionFinding overlap = report.Single(InspectionCodes.Overlap);
        Assert.Equal(["A3", "B3"], overlap.Handles.AsEnumerable());
        Assert.Equal(10, overlap.Value!.Value, 1e-9);
        Assert.Single(report.Parts);
    }

    [Fact]
    public void A_hole_drawn_on_two_cut_layers_is_a_copy()
    {
        string entities = Square() + Sheet.Circle(15, 10, 4, "A5") + Sheet.Circle(15, 10.004, 4, "A6", "PINS");
        InspectionReport report = Sheet.Inspect(entities);
        Assert.Equal(["A5", "A6"], report.Single(InspectionCodes.Duplicate).Handles.AsEnumerable());
        Assert.Single(Assert.Single(report.Parts).Holes);
        report.HasNo(InspectionCodes.ContoursCross);
        Sheet.Inspect(entities, new InspectionSettings { CutLayers = ["cut"] }).HasNo(InspectionCodes.Duplicate);
    }

    [Theory]
    [InlineData(0.019, true)]
    [InlineData(0.021, false)]
    public void A_segment_shorter_than_the_limit_is_told(double length, bool isTold)
    {
        InspectionReport report = Sheet.Inspect(
            Sheet.Closed("A1", (0, 0, 0), (30, 0, 0), (30, 20, 0), (length, 20, 0), (0, 20, 0))
        );
        if (!isTold)
        {
            Assert.Empty(report.Findings);
            return;
        }

        InspectionFinding finding = report.Single(InspectionCodes.MicroSegment);
        Assert.Equal(length, finding.Value!.Value, 1e-12);
        Assert.Equal(0.02, finding.Limit);
        Assert.Equal(new Point(length, 20), finding.At);
    }

    [Theory]
    [InlineData(0.14, true)]
    [InlineData(0.16, false)]
    public void A_contour_smaller_than_the_limit_both_ways_is_dirt(double radius, bool isTold)
    {
        InspectionReport report = Sheet.Inspect(Square() + Sheet.Circle(15, 10, radius, "A5"));
        InspectionFinding[] told = [.. report.Findings.Where(finding => finding.Code == InspectionCodes.TinyFeature)];
        Assert.Equal(isTold ? 1 : 0, told.Length);
        if (isTold)
        {
            Assert.Equal((2 * radius, 0.3), (Math.Round(told[0].Value!.Value, 12), told[0].Limit));
            Assert.Equal(["A5"], told[0].Handles.AsEnumerable());
        }
    }

    [Fact]
    public void A_bow_tie_crosses_itself()
    {
        InspectionReport report = Sheet.Inspect(Sheet.Closed("A1", (0, 0, 0), (20, 20, 0), (20, 0, 0), (0, 21, 0)));
        InspectionFinding finding = report.Single(InspectionCodes.SelfCrossing);
        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.Equal(["A1"], finding.Handles.AsEnumerable());

        // Where y = x meets y = 21 - 21 x / 20.
        Assert.True(finding.At!.Value.IsWithin(1e-9, new Point(21 / 2.05, 21 / 2.05)));
    }

    [Theory]
    [InlineData(3.999, true)]
    [InlineData(4.001, false)]
    public void A_hole_that_reaches_the_border_crosses_the_contour(double x, bool crosses)
    {
        InspectionReport report = Sheet.Inspect(
            Square() + Sheet.Circle(x, 10, 4, "A5"),
            new InspectionSettings { LeastWebMm = 0 }
        );
        if (!crosses)
        {
            Assert.Empty(report.Findings);
            Assert.Equal(0.001, Assert.Single(report.Parts).ThinnestWeb!.ThicknessMm, 1e-9);
            return;
        }

        InspectionFinding finding = report.Single(InspectionCodes.ContoursCross);
        Assert.Equal(["A4", "A5"], finding.Handles.Order(StringComparer.Ordinal));
        Assert.Equal(Severity.Fault, finding.Severity);
    }
}
