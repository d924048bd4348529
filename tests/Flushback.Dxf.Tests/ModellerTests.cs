using System.Text.Json;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Dxf.Writing;
using Flushback.Geometry;

namespace Flushback.Dxf.Tests;

/// <summary>A solid modeller (Debian: libfreecad-python3-0.20) opens what we write and has the very same edges.</summary>
/// <remarks>It reads text only, and no text entities by the importer that is used here.</remarks>
public sealed class ModellerTests(EzdxfDrawings drawings) : IClassFixture<EzdxfDrawings>
{
    private const double ToleranceMm = 1e-9;

    private static readonly Edge Line = new(new(1.0 / 3, 0), new(30.1, -1e-3));
    private static readonly Edge Right = new(new(3, 4), new(-5, 0.125), -0.7);
    private static readonly Edge Left = new(new(8, 4), new(8.5, 12), 1.9);
    private static readonly Circle Pin = new(new(Math.PI, -Math.E), 1.1875);

    private static readonly OverlayLayer Drawing = new(
        "FB_PART",
        1,
        [
            OverlayPath.Of(Marks.Shape),
            new OverlayPath(Marks.Open, IsClosed: false),
            new OverlayEdge(Line),
            new OverlayEdge(Right),
            new OverlayEdge(Left),
            new OverlayCircle(Pin),
        ]
    );

    private static readonly Edge[] Edges = [.. Marks.Shape.Edges, .. Marks.Open, Line, Right, Left];

    public static TheoryData<DxfVersion, DrawingUnit> Written
    {
        get
        {
            TheoryData<DxfVersion, DrawingUnit> written = [];
            foreach (DxfVersion version in Enum.GetValues<DxfVersion>())
            {
                written.Add(version, DrawingUnit.Millimetre);
                written.Add(version, DrawingUnit.Inch);
            }

            return written;
        }
    }

    [Theory]
    [MemberData(nameof(Written))]
    public void A_new_drawing_has_the_same_lines_arcs_and_circles(DxfVersion version, DrawingUnit unit) =>
        AssertSame(Edges, [Pin], Referee.Modelled(DxfWriter.Write(version, unit, [Drawing])));

    [Theory]
    [MemberData(nameof(EzdxfDrawings.TextFiles), MemberType = typeof(EzdxfDrawings))]
    public void A_drawing_with_our_layer_over_it_has_its_own_and_ours(string name)
    {
        byte[] original = drawings.Bytes(name);
        JsonElement[] before = [.. Referee.Modelled(original).EnumerateArray()];
        JsonElement after = Referee.Modelled(DxfOverlay.AddTo(original, DrawingUnit.Millimetre, [Drawing]));
        Assert.Equal(
            before.Select(edge => edge.GetRawText()),
            after.EnumerateArray().Take(before.Length).Select(edge => edge.GetRawText())
        );
        AssertSame(Edges, [Pin], [.. after.EnumerateArray().Skip(before.Length)]);
    }

    [Theory]
    [MemberData(nameof(EzdxfDrawings.TextFiles), MemberType = typeof(EzdxfDrawings))]
    public void A_drawing_with_entities_replaced_has_the_new_ones_in_their_place(string name)
    {
        byte[] original = drawings.Bytes(name);
        DxfDrawing drawing = DxfReader.Read(original, new DxfReadOptions { Unit = DrawingUnit.Millimetre }).Drawing!;
        DxfShape polyline = drawing.ShapesOn("SPRING").Single();
        byte[] rewritten = DxfRewrite
            .Apply(original, DrawingUnit.Millimetre, [new DxfReplacement([polyline], "SPRING", Drawing.Entities)])
            .Bytes;
        JsonElement[] before = [.. Referee.Modelled(original).EnumerateArray()];
        JsonElement[] after = [.. Referee.Modelled(rewritten).EnumerateArray()];

        // Four loose edges before the polyline, and its own four.
        string[] others = [.. before[..4].Concat(before[8..]).Select(edge => edge.GetRawText())];
        int added = Edges.Length + 1;
        Assert.Equal(others, after[..4].Concat(after[(4 + added)..]).Select(edge => edge.GetRawText()));
        AssertSame(Edges, [Pin], after[4..(4 + added)]);
    }

    private static void AssertSame(Edge[] edges, Circle[] circles, JsonElement modelled) =>
        AssertSame(edges, circles, [.. modelled.EnumerateArray()]);

    private static void AssertSame(Edge[] edges, Circle[] circles, JsonElement[] modelled)
    {
        Assert.Equal(edges.Length + circles.Length, modelled.Length);
        foreach ((Edge edge, JsonElement made) in edges.Zip(modelled))
        {
            Assert.Equal(edge.IsArc ? "circle" : "line", made.GetProperty("kind").GetString());
            Assert.False(made.GetProperty("closed").GetBoolean());
            Assert.Equal(edge.LengthMm, made.GetProperty("length").GetDouble(), ToleranceMm);
            AssertNear(edge.PointAt(0.5), made.GetProperty("middle"));

            // It turns an arc that runs clockwise round.
            Point first = PointOf(made.GetProperty("ends")[0]);
            bool isTurned = !first.IsWithin(ToleranceMm, edge.Start);
            AssertNear(isTurned ? edge.End : edge.Start, made.GetProperty("ends")[0]);
            AssertNear(isTurned ? edge.Start : edge.End, made.GetProperty("ends")[1]);
            if (edge.IsArc)
            {
                AssertNear(edge.Centre, made.GetProperty("centre"));
                Assert.Equal(edge.RadiusMm, made.GetProperty("radius").GetDouble(), ToleranceMm);
            }
        }

        foreach ((Circle circle, JsonElement made) in circles.Zip(modelled.Skip(edges.Length)))
        {
            Assert.Equal("circle", made.GetProperty("kind").GetString());
            Assert.True(made.GetProperty("closed").GetBoolean());
            AssertNear(circle.Centre, made.GetProperty("centre"));
            Assert.Equal(circle.RadiusMm, made.GetProperty("radius").GetDouble(), ToleranceMm);
            Assert.Equal(Math.Tau * circle.RadiusMm, made.GetProperty("length").GetDouble(), ToleranceMm);
        }
    }

    private static Point PointOf(JsonElement xy) => new(xy[0].GetDouble(), xy[1].GetDouble());

    private static void AssertNear(Point expected, JsonElement xy) =>
        Assert.True(PointOf(xy).IsWithin(ToleranceMm, expected), $"Not {expected} but {PointOf(xy)}.");
}
