using CsCheck;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Dxf.Writing;
using Flushback.Geometry;

namespace Flushback.Dxf.Tests;

/// <summary>Whatever outline goes out comes back, whole or in pieces.</summary>
public sealed class RoundTripTests
{
    /// <summary>A bend that rises less than a picometre above its chord is read as a line.</summary>
    private const double LeastBulge = 1e-9;

    /// <summary>Star-shaped outlines: corners in order around a centre, edges bent a little.</summary>
    private static readonly Gen<Outline> Outlines = Gen.Select(
            Gen.Double[-1000, 1000],
            Gen.Double[-1000, 1000],
            Gen.Select(Gen.Double[5, 50], Gen.Double[0.1, 0.9], Gen.Double[-0.2, 0.2], Gen.Bool).Array[3, 12]
        )
        .Select(
            (x, y, corners) =>
                Outline.FromVertices([
                    .. corners.Select(
                        (corner, i) =>
                        {
                            (double radius, double part, double bulge, bool isLine) = corner;
                            Angle direction = new(Math.Tau * (i + part) / corners.Length);
                            return new Vertex(
                                new Point(x, y) + (Vector.FromDirection(direction) * radius),
                                isLine || Math.Abs(bulge) < LeastBulge ? 0 : bulge
                            );
                        }
                    ),
                ])
        );

    [Fact]
    public void A_polyline_comes_back_to_the_last_bit() =>
        Gen.Select(Outlines, Gen.Enum<DxfVersion>())
            .Sample(
                (outline, version) =>
                {
                    byte[] file = DxfWriter.Write(
                        version,
                        DrawingUnit.Millimetre,
                        [new("BLADE", 1, [OverlayPath.Of(outline)])]
                    );
                    Contour contour = Assert.Single(Chained(file).Contours);
                    Assert.Equal(outline.Vertices.AsEnumerable(), contour.Outline.Vertices.AsEnumerable());
                }
            );

    [Fact]
    public void An_outline_in_loose_pieces_closes_again_in_any_order_and_direction() =>
        Gen.Select(Outlines, Gen.Int, Gen.Enum<DxfVersion>())
            .Sample(
                (outline, seed, version) =>
                {
                    Random random = new(seed);
                    Edge[] pieces = [.. outline.Edges.Select(edge => random.Next(2) == 0 ? edge : edge.Reversed)];
                    random.Shuffle(pieces);
                    byte[] file = DxfWriter.Write(
                        version,
                        DrawingUnit.Inch,
                        [new("BLADE", 1, [.. pieces.Select(piece => new OverlayPath([piece], IsClosed: false))])]
                    );
                    ChainResult result = Chained(file);
                    Assert.Empty(result.Issues);
                    Contour contour = Assert.Single(result.Contours);
                    Assert.Equal(pieces.Length, contour.Handles.Length);
                    Assert.Equal(outline.AreaMm2, contour.Outline.AreaMm2, 1e-8);
                    Assert.Equal(outline.PerimeterMm, contour.Outline.PerimeterMm, 1e-9);
                }
            );

    [Fact]
    public void What_was_drawn_over_a_drawing_comes_back_and_the_drawing_with_it() =>
        Gen.Select(Outlines, Outlines, Gen.Enum<DxfVersion>())
            .Sample(
                (below, above, version) =>
                {
                    byte[] original = DxfWriter.Write(
                        version,
                        DrawingUnit.Thou,
                        [new("SPRING", 1, [OverlayPath.Of(below)])]
                    );
                    byte[] both = DxfOverlay.AddTo(
                        original,
                        DrawingUnit.Thou,
                        [new("BLADE", 2, [OverlayPath.Of(above)])]
                    );
                    Assert.Equal(Geometry(original, "SPRING"), Geometry(both, "SPRING"));
                    Assert.Equal(above.AreaMm2, Assert.Single(Chained(both).Contours).Outline.AreaMm2, 1e-8);
                }
            );

    [Fact]
    public void What_was_replaced_by_itself_piece_by_piece_comes_back_in_its_place() =>
        Gen.Select(Outlines, Outlines, Gen.Int, Gen.Enum<DxfVersion>(), Gen.Bool)
            .Sample(
                (one, other, seed, version, isInInches) =>
                {
                    DrawingUnit unit = isInInches ? DrawingUnit.Inch : DrawingUnit.Thou;
                    byte[] original = DxfWriter.Write(
                        version,
                        unit,
                        [
                            new(
                                "BLADE",
                                1,
                                [
                                    OverlayPath.Of(one),
                                    .. other.Edges.Select(edge => new OverlayEdge(edge)),
                                    new OverlayCircle(Pin),
                                ]
                            ),
                        ]
                    );
                    Random random = new(seed);
                    DxfShape[] gone = [.. Read(original).Shapes.Where(_ => random.Next(2) == 0)];
                    byte[] rewritten = DxfRewrite
                        .Apply(
                            original,
                            unit,
                            [.. gone.Select(shape => new DxfReplacement([shape], "BLADE", [.. Same(shape)]))]
                        )
                        .Bytes;
                    Edge[] before = [.. Read(original).Shapes.SelectMany(TrueCurves.EdgesOf)];
                    Edge[] after = [.. Read(rewritten).Shapes.SelectMany(TrueCurves.EdgesOf)];
                    Assert.Equal(before.Length, after.Length);
                    Assert.All(before.Zip(after), pair => AssertNear(pair.First, pair.Second));
                }
            );

    private static readonly Circle Pin = new(new(1.0 / 3, -7), 1.1875);

    private static IEnumerable<OverlayEntity> Same(DxfShape shape) =>
        shape.Geometry is FullCircle full
            ? [new OverlayCircle(full.Circle)]
            : TrueCurves.EdgesOf(shape).Select(edge => new OverlayEdge(edge));

    // An ARC always runs counter-clockwise, so an arc may come back turned round.
    private static void AssertNear(Edge expected, Edge actual)
    {
        Edge turned = expected.IsArc && expected.Bulge < 0 != actual.Bulge < 0 ? actual.Reversed : actual;
        Assert.True(expected.Start.IsWithin(1e-9, turned.Start), $"{expected} is {turned}");
        Assert.True(expected.End.IsWithin(1e-9, turned.End), $"{expected} is {turned}");
        Assert.True(expected.PointAt(0.5).IsWithin(1e-9, turned.PointAt(0.5)), $"{expected} is {turned}");
    }

    private static ChainResult Chained(byte[] file) => DxfContours.ContoursOf(Read(file), "BLADE", 0.01);

    private static IEnumerable<Edge> Geometry(byte[] file, string layer) =>
        Read(file).ShapesOn(layer).SelectMany(TrueCurves.EdgesOf);

    private static DxfDrawing Read(byte[] file) =>
        Assert.IsType<DxfDrawing>(DxfReader.Read(file, DxfReadOptions.Default).Drawing);
}
