using System.Text.Json;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Geometry;

namespace Flushback.Dxf.Tests;

/// <summary>Files of every version, written by an independent program.</summary>
public sealed class EzdxfReadingTests(EzdxfDrawings drawings) : IClassFixture<EzdxfDrawings>
{
    [Theory]
    [MemberData(nameof(EzdxfDrawings.AllFiles), MemberType = typeof(EzdxfDrawings))]
    public void Every_version_and_form_reads_to_the_same_geometry(string name)
    {
        DxfReadResult result = DxfReader.Read(
            drawings.Bytes(name),
            // R12 has no $INSUNITS of its own, and ezdxf keeps to that.
            new DxfReadOptions
            {
                Unit = name.Contains("R12", StringComparison.Ordinal) ? DrawingUnit.Millimetre : null,
            }
        );
        DxfDrawing drawing = Assert.IsType<DxfDrawing>(result.Drawing);
        JsonElement contents = drawings.Contents.GetProperty(name);
        Assert.Equal(contents.GetProperty("version").GetString(), drawing.VersionMark);
        Assert.Equal(DrawingUnit.Millimetre, drawing.Unit);

        Outline blade = Assert.Single(DxfContours.ContoursOf(drawing, "BLADE", 0.01).Contours).Outline;
        Assert.Equal(300 + (25 * Math.PI), blade.AreaMm2, 1e-9);
        Assert.True(new Point(30 + (1.0 / 3) + 5, 10).IsWithin(1e-9, new Point(blade.Bounds.MaxX, blade.Bounds.MaxY)));

        Outline spring = Assert.Single(DxfContours.ContoursOf(drawing, "SPRING", 0.01).Contours).Outline;
        JsonElement[] expected = [.. contents.GetProperty("spring").EnumerateArray()];
        Assert.Equal(expected.Length, spring.Vertices.Length);
        for (int i = 0; i < expected.Length; i++)
        {
            Assert.Equal(expected[i][0].GetDouble(), spring.Vertices[i].Position.X, 1e-9);
            Assert.Equal(expected[i][1].GetDouble(), spring.Vertices[i].Position.Y, 1e-9);
            Assert.Equal(expected[i][2].GetDouble(), spring.Vertices[i].Bulge, 1e-12);
        }

        // Layer names survive code pages and UTF-8.
        Assert.Single(DxfContours.ContoursOf(drawing, "Griffschale_\u00E4\u00DF", 0.01).Circles);

        var pins = DxfContours.ContoursOf(drawing, "PINS", 0.01).Circles;
        Assert.Equal(
            [new Circle(new(Math.PI, Math.E), 1.1875), new Circle(new(-10, 5), 2)],
            pins.Select(pin => pin.Circle)
        );
        Assert.Equal(
            [DxfIssueCodes.EntityIgnored, DxfIssueCodes.LayerHidden, DxfIssueCodes.LayerHidden],
            result
                .Issues.Where(issue => issue.Kind == DxfIssueKind.Notice)
                .Select(issue => issue.Code)
                .Order(StringComparer.Ordinal)
        );
    }
}
