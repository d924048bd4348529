using System.Collections.Immutable;
using System.Text;
using CsCheck;
using Flushback.Dxf.Reading;
using Flushback.Geometry;
using Flushback.Inspection.Repair;
using Flushback.Inspection.Tests.Referee;

namespace Flushback.Inspection.Tests;

/// <summary>The repaired copy: what was mended is not found again, and everything else is there byte for byte.</summary>
public sealed class RepairTests
{
    private static readonly ImmutableArray<string> Mendable =
    [
        InspectionCodes.Gap,
        InspectionCodes.ZeroLength,
        InspectionCodes.MicroSegment,
        InspectionCodes.Duplicate,
        InspectionCodes.Overlap,
        InspectionCodes.CurveLeft,
        InspectionCodes.PolygonForArc,
    ];

    private static string Square(double gap = 0) =>
        Sheet.Line(0, 0, 30, 0, "A1")
        + Sheet.Line(30, 0, 30, 20, "A2")
        + Sheet.Line(30, 20, 0, 20, "A3")
        + Sheet.Line(0, 20, gap, 0, "A4");

    private static (RepairedDrawing Copy, string Text, InspectionReport After) Repaired(
        string file,
        InspectionSettings? settings = null
    )
    {
        RepairedDrawing copy = RepairedDrawing.Make(
            Encoding.UTF8.GetBytes(file),
            Sheet.Read(file),
            settings ?? Sheet.Defaults
        );
        string text = Encoding.UTF8.GetString(copy.Bytes);
        return (
            copy,
            text,
            ProfileInspection.Run(Sheet.Read(text), settings ?? Sheet.Defaults, CancellationToken.None)
        );
    }

    private static InspectionReport AssertMended(string entities, params string[] codes)
    {
        InspectionReport before = Sheet.Inspect(entities);
        Assert.All(codes, code => Assert.Contains(before.Findings, finding => finding.Code == code));
        (RepairedDrawing copy, _, InspectionReport after) = Repaired(Sheet.File(entities));
        Assert.DoesNotContain(after.Findings, finding => Mendable.Contains(finding.Code));
        Assert.NotEmpty(copy.Repairs);
        Assert.Empty(copy.Left);
        return after;
    }

    [Fact]
    public void A_sound_drawing_comes_back_byte_for_byte()
    {
        string file = Sheet.File(Square() + Sheet.Circle(15, 10, 4, "A5"));
        (RepairedDrawing copy, string text, _) = Repaired(file);
        Assert.Equal(file, text);
        Assert.Empty(copy.Repairs);
        Assert.Empty(copy.Left);
    }

    [Fact]
    public void A_gap_is_joined_and_the_entities_beside_it_stay_as_they_are()
    {
        string file = Sheet.File(Square(0.008) + Sheet.Circle(15, 10, 4, "A5"));
        (RepairedDrawing copy, string text, InspectionReport after) = Repaired(file);
        Assert.Contains("A gap of 0.008 mm", Assert.Single(copy.Repairs), StringComparison.Ordinal);
        Assert.Empty(after.Findings);
        Assert.Contains(
            Sheet.Line(30, 0, 30, 20, "A2") + Sheet.Line(30, 20, 0, 20, "A3"),
            text,
            StringComparison.Ordinal
        );
        Assert.Contains(Sheet.Circle(15, 10, 4, "A5"), text, StringComparison.Ordinal);
        Assert.Equal(600 - (16 * Math.PI) - (0.004 * 10), Assert.Single(after.Parts).AreaMm2, 1e-9);
    }

    [Fact]
    public void Copies_overlaps_and_edges_of_no_length_go()
    {
        InspectionReport after = AssertMended(
            Square()
                + Sheet.Line(5, 0, 5, 0, "B1")
                + Sheet.Line(30, 20, 30, 0, "B2")
                + Sheet.Line(10, 20, 0, 20, "B3")
                + Sheet.Circle(15, 10, 4, "A5")
                + Sheet.Circle(15, 10, 4, "A6", "PINS"),
            InspectionCodes.ZeroLength,
            InspectionCodes.Duplicate,
            InspectionCodes.Overlap
        );
        Assert.Equal(600 - (16 * Math.PI), Assert.Single(after.Parts).AreaMm2, 1e-9);
        Assert.Equal(100 + (8 * Math.PI), after.CutLengthMm, 1e-9);
    }

    [Fact]
    public void A_chain_of_overlaps_becomes_one_line()
    {
        InspectionReport after = AssertMended(
            Sheet.Line(0, 0, 14, 0, "A1")
                + Sheet.Line(10, 0, 24, 0, "B1")
                + Sheet.Line(20, 0, 30, 0, "B2")
                + Square()[Sheet.Line(0, 0, 30, 0, "A1").Length..],
            InspectionCodes.Overlap
        );
        Assert.Equal(600, Assert.Single(after.Parts).AreaMm2, 1e-9);
        Assert.Equal(100, after.CutLengthMm, 1e-9);
    }

    [Fact]
    public void A_speck_in_a_gap_goes_and_the_gap_is_joined()
    {
        InspectionReport after = AssertMended(
            Sheet.Line(0.006, 0, 30, 0, "A1")
                + Square()[Sheet.Line(0, 0, 30, 0, "A1").Length..]
                + Sheet.Line(0.002, 0, 0.004, 0, "B1"),
            InspectionCodes.ZeroLength,
            InspectionCodes.Gap
        );
        Assert.Single(after.Parts);
    }

    [Fact]
    public void A_polygon_for_a_hole_becomes_its_circle()
    {
        (double X, double Y, double Bulge)[] corners =
        [
            .. Enumerable
                .Range(0, 48)
                .Select(i => (20 + (1.2 * Math.Cos(i * Math.Tau / 48)), 10 + (1.2 * Math.Sin(i * Math.Tau / 48)), 0.0)),
        ];
        InspectionReport after = AssertMended(
            Sheet.Box("A1", 0, 0, 40, 20) + Sheet.Closed("A2", corners),
            InspectionCodes.PolygonForArc
        );
        Circle circle = Assert.Single(Assert.Single(after.Parts).Holes).Circle!.Value;
        Assert.Equal(2.4, circle.DiameterMm, 1e-9);
        Assert.True(circle.Centre.IsWithin(1e-9, new Point(20, 10)));
    }

    [Fact]
    public void Loose_lines_for_a_round_end_become_one_arc_and_the_sides_stay()
    {
        string lines = string.Concat(
            Enumerable
                .Range(0, 36)
                .Select(i =>
                    Sheet.Line(
                        30 + (5 * Math.Sin(i * Math.PI / 36)),
                        -5 * Math.Cos(i * Math.PI / 36),
                        30 + (5 * Math.Sin((i + 1) * Math.PI / 36)),
                        -5 * Math.Cos((i + 1) * Math.PI / 36),
                        $"C{i}"
                    )
                )
        );
        string sides = Sheet.Line(0, -5, 30, -5, "A1") + Sheet.Line(30, 5, 0, 5, "A2") + Sheet.Line(0, 5, 0, -5, "A3");
        InspectionReport after = AssertMended(sides + lines, InspectionCodes.PolygonForArc);
        InspectedPart part = Assert.Single(after.Parts);
        Assert.Equal(300 + (12.5 * Math.PI), part.AreaMm2, 1e-6);
        Assert.Contains("A1", part.Handles);
        Assert.Equal(4, part.Contour.Edges.Length);
    }

    [Fact]
    public void An_ellipse_becomes_arcs_on_its_layer()
    {
        string ellipse =
            Sheet.Entity("ELLIPSE", "BLADE", "A1")
            + Sheet.Groups((10, 0), (20, 0), (30, 0), (11, 20), (21, 0), (31, 0), (40, 0.5), (41, 0), (42, Math.Tau));
        InspectionReport after = AssertMended(ellipse, InspectionCodes.CurveLeft);
        InspectedPart part = Assert.Single(after.Parts);
        Assert.Equal("BLADE", part.Layer);

        // pi a b, to within the curve tolerance of 0.001 all round.
        Assert.Equal(200 * Math.PI, part.AreaMm2, 0.1);
    }

    [Fact]
    public void Segments_too_short_to_cut_go_into_their_neighbours()
    {
        InspectionReport after = AssertMended(
            Sheet.Closed("A1", (0, 0, 0), (30, 0, 0), (30, 19.99, 0), (29.99, 20, 0), (0, 20, 0)),
            InspectionCodes.MicroSegment
        );
        InspectedPart part = Assert.Single(after.Parts);
        Assert.Equal(4, part.Contour.Edges.Length);
        Assert.Equal(600, part.AreaMm2, 0.02 * 50);
    }

    [Fact]
    public void A_side_of_a_thousand_short_lines_becomes_a_few()
    {
        InspectionReport after = AssertMended(
            Sheet.Closed(
                "A1",
                [(0, 0, 0), .. Enumerable.Range(1, 1000).Select(i => (i * 0.0101, 0.0, 0.0)), (10.1, 20, 0), (0, 20, 0)]
            ),
            InspectionCodes.MicroSegment
        );
        Assert.Equal(202, Assert.Single(after.Parts).AreaMm2, 1e-6);
    }

    [Fact]
    public void An_open_contour_is_left_and_told()
    {
        string file = Sheet.File(Square()[..Square().IndexOf(Sheet.Line(0, 20, 0, 0, "A4"), StringComparison.Ordinal)]);
        (RepairedDrawing copy, string text, _) = Repaired(file);
        Assert.Equal(file, text);
        Assert.Contains("does not close", Assert.Single(copy.Left), StringComparison.Ordinal);
    }

    [Fact]
    public void What_stands_in_a_block_is_left_and_told()
    {
        string block =
            "0\nSECTION\n2\nBLOCKS\n0\nBLOCK\n8\n0\n2\nTANG\n70\n0\n10\n0\n20\n0\n"
            + Sheet.Closed("A1", (0, 0, 0), (30, 0, 0), (30, 19.99, 0), (29.99, 20, 0), (0, 20, 0))
            + Sheet.Circle(10, 10, 2, "A2")
            + Sheet.Circle(10, 10, 2, "A3")
            + "0\nENDBLK\n8\n0\n0\nENDSEC\n";
        string insert = Sheet.Entity("INSERT", "CUT", "B1") + "2\nTANG\n" + Sheet.Groups((10, 5), (20, 5));
        string file = Sheet
            .File(insert)
            .Replace("0\nSECTION\n2\nENTITIES", block + "0\nSECTION\n2\nENTITIES", StringComparison.Ordinal);
        (RepairedDrawing copy, string text, InspectionReport after) = Repaired(file);
        Assert.Equal(file, text);
        Assert.Empty(copy.Repairs);
        Assert.Equal(2, copy.Left.Length);
        Assert.All(copy.Left, sentence => Assert.Contains("explode the block", sentence, StringComparison.Ordinal));
        Assert.Single(after.Findings, finding => finding.Code == InspectionCodes.MicroSegment);
    }

    [Fact]
    public void An_inch_drawing_is_mended_in_inches()
    {
        string file = Sheet.File(
            Sheet.Line(0, 0, 2, 0, "A1")
                + Sheet.Line(2, 0, 2, 1, "A2")
                + Sheet.Line(2, 1, 0, 1, "A3")
                + Sheet.Line(0, 1, 0.0003, 0, "A4"),
            Sheet.InInches
        );
        (_, string text, InspectionReport after) = Repaired(file);
        Assert.Empty(after.Findings);
        Assert.Contains(Sheet.Line(2, 0, 2, 1, "A2"), text, StringComparison.Ordinal);
        Assert.Equal(50.8, after.Bounds.WidthMm, 1e-9);
    }

    [Fact]
    public void Layers_that_are_not_cut_stay_as_they_are()
    {
        string file = Sheet.File(
            Sheet.Box("A1", 0, 0, 40, 20) + Sheet.Circle(5, 5, 1, "B1", "NOTES") + Sheet.Circle(5, 5, 1, "B2", "NOTES")
        );
        (_, string text, _) = Repaired(file, new InspectionSettings { CutLayers = ["CUT"] });
        Assert.Equal(file, text);
    }

    [Fact]
    public void Damaged_random_parts_are_mended_and_keep_their_shape()
    {
        Gen.Select(AnyPart.WithHoles, Gen.Int[0, 1 << 20])
            .Sample(
                (part, seed) =>
                {
                    string damaged = Damage.Of(part.Outer, part.Holes, seed);
                    InspectionReport before = Sheet.Inspect(damaged);
                    (RepairedDrawing copy, string text, InspectionReport after) = Repaired(Sheet.File(damaged));
                    Assert.DoesNotContain(after.Findings, finding => Mendable.Contains(finding.Code));
                    Assert.Equal(before.Parts.Length, after.Parts.Length);
                    Assert.Equal(
                        before.Parts.Sum(found => found.AreaMm2),
                        after.Parts.Sum(found => found.AreaMm2),
                        0.03 * before.CutLengthMm
                    );

                    // Mended once, there is nothing left to mend.
                    Assert.Equal(text, Repaired(text).Text);
                },
                iter: 200
            );
    }

    [Fact]
    public void A_drawing_that_could_not_be_read_is_refused()
    {
        DxfReadResult read = DxfReader.Read("nothing"u8.ToArray(), DxfReadOptions.Default);
        Assert.Throws<ArgumentException>(() => RepairedDrawing.Make("nothing"u8.ToArray(), read, Sheet.Defaults));
        Assert.Throws<ArgumentException>(() => ProfileInspection.Run(read, Sheet.Defaults));
    }
}
