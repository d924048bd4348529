using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Geometry;

namespace Flushback.Dxf.Tests;

/// <summary>Ellipses, splines and placed blocks against points that an independent program computes on the true curves.</summary>
public sealed class EzdxfCurveTests(EzdxfDrawings drawings) : IClassFixture<EzdxfDrawings>
{
    private const double ToleranceMm = 0.001;

    /// <summary>How far the referee's chords may lie off the curve between its points.</summary>
    private const double ChordMm = 2e-4;

    /// <summary>Layers that hold one curve each, and whether lines and arcs hold it exactly.</summary>
    public static TheoryData<string, bool> Curves =>
        new()
        {
            { "WHOLE_ELLIPSE", false },
            { "PART_ELLIPSE", false },
            { "ELLIPSE_BEHIND", false },
            { "ROUND_ELLIPSE", true },
            { "CUBIC", false },
            { "QUADRATIC", false },
            { "QUINTIC", false },
            { "CLOSED", false },
            { "RATIONAL", false },
            { "CLOSED_RATIONAL", false },
            { "SPLINE_CIRCLE", true },
            { "KINKED", false },
            { "FIT_WITH_TANGENTS", false },
            { "PLACED", false },
            { "SCALED", false },
            { "MIRRORED", false },
            { "UPSIDE_DOWN", false },
            { "UNEQUAL", false },
            { "BEHIND", false },
            { "NESTED", false },
            { "NESTED_UNEQUAL", false },
            { "ARRAY", false },
        };

    [Theory]
    [MemberData(nameof(Curves))]
    public void A_curve_stays_within_the_tolerance_both_ways(string layer, bool isExact)
    {
        foreach (string name in new[] { "curves_R2000.dxf", "curves_R2018.dxf" })
        {
            Edge[] edges = [.. Read(name).ShapesOn(layer).SelectMany(TrueCurves.EdgesOf)];
            Point[][] curves = PointsOf(name, layer);
            Assert.NotEmpty(curves);

            Assert.InRange(TrueCurves.FarthestFromEdges(curves, edges), 0, isExact ? 1e-9 : ToleranceMm);
            Assert.InRange(TrueCurves.FarthestFromCurves(edges, curves), 0, ToleranceMm + ChordMm);
        }
    }

    [Fact]
    public void Every_layer_of_the_referee_is_compared()
    {
        IEnumerable<string> made = drawings
            .Contents.GetProperty("curves_R2000.dxf")
            .GetProperty("curves")
            .EnumerateObject()
            .Select(p => p.Name);
        Assert.Equal(
            made.Order(StringComparer.Ordinal),
            Curves.Select(row => (string)row[0]).Order(StringComparer.Ordinal)
        );
    }

    [Fact]
    public void Lines_arcs_and_circles_of_a_placed_block_are_exact()
    {
        DxfDrawing drawing = Read("curves_R2018.dxf");
        foreach (string layer in new[] { "PLACED", "SCALED", "MIRRORED", "UPSIDE_DOWN", "BEHIND", "NESTED", "ARRAY" })
        {
            Edge[] edges =
            [
                .. drawing.ShapesOn(layer).Where(shape => shape.TypeName != "ELLIPSE").SelectMany(TrueCurves.EdgesOf),
            ];
            Point[] exact =
            [
                .. PointsOf("curves_R2018.dxf", layer).Where((_, i) => i % 6 != 5).SelectMany(points => points),
            ];
            Assert.InRange(TrueCurves.FarthestFromEdges([exact], edges), 0, 1e-9);
        }
    }

    [Fact]
    public void A_circle_under_equal_scales_stays_a_circle()
    {
        DxfShape circle = Read("curves_R2018.dxf").ShapesOn("SCALED").Single(shape => shape.TypeName == "CIRCLE");
        Assert.Equal(3.75, Assert.IsType<FullCircle>(circle.Geometry).Circle.RadiusMm, 1e-12);
        Assert.Contains('/', circle.Handle);
    }

    [Fact]
    public void A_circle_drawn_as_a_spline_is_found_to_be_a_circle()
    {
        var pin = Assert.Single(
            Chaining.DxfContours.ContoursOf(Read("curves_R2000.dxf"), "SPLINE_CIRCLE", 0.01).Circles
        );
        Assert.Equal(5, pin.Circle.RadiusMm, 1e-9);
    }

    [Fact]
    public void The_tolerance_decides_how_many_arcs_a_curve_takes()
    {
        int Arcs(double toleranceMm) =>
            TrueCurves
                .EdgesOf(
                    DxfReader
                        .Read(drawings.Bytes("curves_R2000.dxf"), new DxfReadOptions { CurveToleranceMm = toleranceMm })
                        .Drawing!.ShapesOn("WHOLE_ELLIPSE")
                        .Single()
                )
                .Count();

        // The error of a biarc falls with the third power of its length: a thousandth of the error, ten times the arcs.
        Assert.InRange(Arcs(1e-6) / (double)Arcs(1e-3), 4, 20);
    }

    private DxfDrawing Read(string name) =>
        Assert.IsType<DxfDrawing>(
            DxfReader.Read(drawings.Bytes(name), new DxfReadOptions { CurveToleranceMm = ToleranceMm }).Drawing
        );

    private Point[][] PointsOf(string name, string layer) =>
        TrueCurves.PointsOf(drawings.Contents.GetProperty(name).GetProperty("curves").GetProperty(layer));
}
