using System.Text.Json;
using Flushback.Dxf.Chaining;
using Flushback.Dxf.Drawings;
using Flushback.Dxf.Reading;
using Flushback.Geometry;

namespace Flushback.Dxf.Tests;

/// <summary>
/// Drawings that other people made: the part library of a CAD program, from the Debian package <c>librecad-data</c>
/// (2.2.0-1). Nothing of it is copied here; when it is not installed, the tests fail.
/// </summary>
public sealed class ThirdPartyDrawingTests
{
    private const string Library = "/usr/share/librecad/library";

    private static readonly DxfReadOptions Options = new() { Unit = DrawingUnit.Millimetre };

    /// <summary>Loose lines and arcs, bulges, blocks with negative scale, splines, a large sheet.</summary>
    public static TheoryData<string> Chosen =>
        [
            "misc/t-part.dxf",
            "misc/screw.dxf",
            "block/blk1.dxf",
            "elektro/opto/ve16.dxf",
            "kinetics/kin39.dxf",
            "kinetics/kin116.dxf",
        ];

    [Theory]
    [MemberData(nameof(Chosen))]
    public void A_real_drawing_reads_to_the_curves_that_an_independent_reader_sees(string file)
    {
        string path = Found(file);
        DxfDrawing drawing = Assert.IsType<DxfDrawing>(DxfReader.Read(File.ReadAllBytes(path), Options).Drawing);
        JsonElement seen = Referee.Sample(path).GetProperty("curves");
        Assert.NotEmpty(seen.EnumerateObject());
        foreach (JsonProperty layer in seen.EnumerateObject())
        {
            Point[][] curves = TrueCurves.PointsOf(layer.Value);
            Edge[] edges = [.. drawing.ShapesOn(layer.Name).SelectMany(TrueCurves.EdgesOf)];
            Assert.InRange(TrueCurves.FarthestFromEdges(curves, edges), 0, 0.001);
            Assert.InRange(TrueCurves.FarthestFromCurves(edges, curves), 0, 0.003);
        }
    }

    [Fact]
    public void Every_drawing_of_the_library_is_read()
    {
        string[] files = Directory.GetFiles(Found(""), "*.dxf", SearchOption.AllDirectories);
        Assert.True(files.Length > 1000);
        foreach (string file in files)
        {
            DxfReadResult result = DxfReader.Read(File.ReadAllBytes(file), Options);
            Assert.True(
                result.Drawing is not null,
                $"{file}: {string.Join(' ', result.Issues.Select(issue => issue.Sentence))}"
            );
            foreach (DxfLayer layer in result.Drawing.Layers)
            {
                Assert.NotNull(DxfContours.ContoursOf(result.Drawing, layer.Name, 0.01));
            }
        }
    }

    internal static string Found(string file)
    {
        string path = Path.Combine(Library, file);
        Assert.True(Path.Exists(path), $"{path} is missing: apt-get install librecad-data");
        return path;
    }
}
