namespace Flushback.Inspection.Tests;

/// <summary>What lies in what, and what does not belong on a cut layer.</summary>
public sealed class NestingTests
{
    [Fact]
    public void A_hole_on_another_layer_belongs_to_the_part_around_it()
    {
        InspectionReport report = Sheet.Inspect(
            Sheet.Box("A1", 0, 0, 40, 20, "BLADE") + Sheet.Circle(10, 10, 3, "A2", "PINS")
        );
        Assert.Empty(report.Findings);
        InspectedHole hole = Assert.Single(Assert.Single(report.Parts).Holes);
        Assert.Equal("PINS", hole.Layer);
        Assert.Equal(6, hole.Circle!.Value.DiameterMm, 1e-12);
    }

    [Fact]
    public void A_contour_within_a_hole_is_another_part_or_dirt()
    {
        InspectionReport report = Sheet.Inspect(
            Sheet.Box("A1", 0, 0, 40, 20) + Sheet.Circle(20, 10, 8, "A2") + Sheet.Circle(20, 10, 2, "A3")
        );
        InspectionFinding finding = report.Single(InspectionCodes.NestedWrongly);
        Assert.Equal(["A3"], finding.Handles.AsEnumerable());
        Assert.Equal(2, report.Parts.Length);
        Assert.Equal(["A2"], Assert.Single(report.Parts[0].Holes).Handles.AsEnumerable());
        Assert.Empty(report.Parts[1].Holes);
        Assert.Equal(800 - (64 * Math.PI), report.Parts[0].AreaMm2, 1e-9);
    }

    [Fact]
    public void Two_parts_on_one_layer_are_told_and_one_on_each_of_two_layers_are_not()
    {
        InspectionReport one = Sheet.Inspect(Sheet.Box("A1", 0, 0, 40, 20) + Sheet.Box("A2", 50, 0, 40, 20));
        InspectionFinding finding = one.Single(InspectionCodes.SeveralParts);
        Assert.Equal(Severity.Note, finding.Severity);
        Assert.Equal((2.0, 1.0), (finding.Value, finding.Limit));
        Assert.True(one.IsClean);
        Assert.Empty(Sheet.Inspect(Sheet.Box("A1", 0, 0, 40, 20) + Sheet.Box("A2", 50, 0, 40, 20, "SPRING")).Findings);
    }

    [Fact]
    public void Text_on_a_cut_layer_is_told_and_text_on_its_own_layer_is_not()
    {
        static string Text(string layer) =>
            Sheet.Entity("TEXT", layer, "B1") + Sheet.Groups((10, 0), (20, 0), (40, 5)) + "1\nwagtail\n";

        string part = Sheet.Box("A1", 0, 0, 40, 20);
        InspectionFinding finding = Sheet.Inspect(part + Text("CUT")).Single(InspectionCodes.NotForCutting);
        Assert.Equal((1.0, "CUT"), (finding.Value, finding.Layer));
        Assert.Equal(["B1"], finding.Handles.AsEnumerable());
        Assert.Empty(Sheet.Inspect(part + Text("NOTES")).Findings);
    }

    [Fact]
    public void A_spline_and_an_ellipse_are_told_with_the_arcs_they_become()
    {
        string ellipse =
            Sheet.Entity("ELLIPSE", "CUT", "A1")
            + Sheet.Groups((10, 0), (20, 0), (30, 0), (11, 20), (21, 0), (31, 0), (40, 0.5), (41, 0), (42, Math.Tau));
        InspectionReport report = Sheet.Inspect(ellipse);
        InspectionFinding finding = report.Single(InspectionCodes.CurveLeft);
        Assert.Equal(["A1"], finding.Handles.AsEnumerable());
        Assert.Equal(Assert.Single(report.Parts).Contour.Edges.Length, finding.Value);
        report.HasNo(InspectionCodes.MicroSegment);
        report.HasNo(InspectionCodes.PolygonForArc);
    }

    [Fact]
    public void An_entity_that_cannot_be_read_is_a_fault_on_a_cut_layer_only()
    {
        string unread = Sheet.Entity("REGION", "CUT", "B1");
        InspectionReport report = Sheet.Inspect(Sheet.Box("A1", 0, 0, 40, 20) + unread);
        Assert.Equal(["B1"], report.Single(InspectionCodes.Unreadable).Handles.AsEnumerable());
        Assert.False(report.IsClean);
        Assert.Empty(
            Sheet
                .Inspect(
                    Sheet.Box("A1", 0, 0, 40, 20, "BLADE") + unread,
                    new InspectionSettings { CutLayers = ["BLADE"] }
                )
                .Findings
        );
    }

    [Fact]
    public void A_circle_drawn_as_a_polygon_is_told_with_the_circle_it_stands_for()
    {
        (double X, double Y, double Bulge)[] corners =
        [
            .. Enumerable
                .Range(0, 48)
                .Select(i => (20 + (1.2 * Math.Cos(i * Math.Tau / 48)), 10 + (1.2 * Math.Sin(i * Math.Tau / 48)), 0.0)),
        ];
        InspectionReport report = Sheet.Inspect(Sheet.Box("A1", 0, 0, 40, 20) + Sheet.Closed("A2", corners));
        InspectionFinding finding = report.Single(InspectionCodes.PolygonForArc);
        Assert.Equal(["A2"], finding.Handles.AsEnumerable());

        // The middle of a chord lies R (1 - cos(pi / n)) inside (elementary geometry).
        Assert.Equal(1.2 * (1 - Math.Cos(Math.PI / 48)), finding.Value!.Value, 1e-9);
        Assert.Empty(
            Sheet
                .Inspect(
                    Sheet.Box("A1", 0, 0, 40, 20)
                        + Sheet.Closed(
                            "A2",
                            [
                                .. Enumerable
                                    .Range(0, 6)
                                    .Select(i =>
                                        (
                                            20 + (3 * Math.Cos(i * Math.Tau / 6)),
                                            10 + (3 * Math.Sin(i * Math.Tau / 6)),
                                            0.0
                                        )
                                    ),
                            ]
                        )
                )
                .Findings
        );
    }

    [Fact]
    public void A_drawing_with_nothing_to_cut_says_so()
    {
        InspectionReport report = Sheet.Inspect(
            Sheet.Box("A1", 0, 0, 40, 20),
            new InspectionSettings { CutLayers = ["SPRING"] }
        );
        InspectionFinding finding = report.Single(InspectionCodes.NothingToCut);
        Assert.Equal(Severity.Fault, finding.Severity);
        Assert.Contains("CUT", finding.Message, StringComparison.Ordinal);
        Assert.Empty(report.CutLayers);
    }

    [Fact]
    public void Layers_that_this_program_drew_are_not_cut_unless_asked_for()
    {
        string entities = Sheet.Box("A1", 0, 0, 40, 20) + Sheet.Circle(5, 5, 1, "A2", "FLUSHBACK_CONTACTS");
        Assert.Equal(["CUT"], Sheet.Inspect(entities).CutLayers.AsEnumerable());
        Assert.Equal(
            ["FLUSHBACK_CONTACTS"],
            Sheet
                .Inspect(entities, new InspectionSettings { CutLayers = ["flushback_contacts"] })
                .CutLayers.AsEnumerable()
        );
    }

    [Theory]
    [InlineData(9.9, true)]
    [InlineData(10.1, false)]
    [InlineData(3999, false)]
    [InlineData(4001, true)]
    public void A_size_that_no_shop_cuts_suggests_another_unit(double size, bool isTold)
    {
        InspectionReport report = Sheet.Inspect(Sheet.Box("A1", 0, 0, size, size / 2));
        Assert.Equal(isTold, report.Findings.Any(finding => finding.Code == InspectionCodes.ImplausibleUnit));
        if (isTold)
        {
            Assert.Equal(size, report.Single(InspectionCodes.ImplausibleUnit).Value!.Value, 1e-9);
        }
    }

    [Fact]
    public void A_knife_in_inches_read_as_millimetres_is_offered_its_size_in_inches()
    {
        InspectionFinding finding = Sheet
            .Inspect(Sheet.Box("A1", 0, 0, 4, 0.75))
            .Single(InspectionCodes.ImplausibleUnit);
        Assert.Contains("in inches it would be 101.6 mm (4 in)", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_unit_taken_from_the_measurement_variable_is_a_guess()
    {
        string file = Sheet.File(Sheet.Box("A1", 0, 0, 40, 20), "9\n$MEASUREMENT\n70\n1\n");
        InspectionReport report = ProfileInspection.Run(Sheet.Read(file), Sheet.Defaults, CancellationToken.None);
        Assert.Equal(Severity.Warning, report.Single(InspectionCodes.UnitGuessed).Severity);
        Sheet.Inspect(Sheet.Box("A1", 0, 0, 40, 20)).HasNo(InspectionCodes.UnitGuessed);
    }
}
