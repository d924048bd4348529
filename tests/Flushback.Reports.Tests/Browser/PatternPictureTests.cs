using System.Globalization;
using Flushback.Geometry;
using Flushback.Patterns;
using Flushback.Reports.Templates;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests.Browser;

/// <summary>The picture of the pieces, measured by a browser.</summary>
public sealed class PatternPictureTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const double PixelsPerMm = 96 / 25.4;

    // The browser measures in single precision.
    private const double SeenMm = 0.001;

    private const double GapMm = 10;
    private const double EdgeMm = 5;

    /// <summary>One blade, and every pair.</summary>
    public static TheoryData<string> Patterns => ["one", .. SamplePairs.All];

    [Fact]
    public async Task The_browser_shows_it_at_its_size()
    {
        await using OpenPage open = await OpenAsync(SamplePatterns.Default);
        Box sheet = PieceLayout.Of(SamplePatterns.Default, GapMm).Bounds.Grown(EdgeMm);

        double[] shown = await open.Page.EvaluateAsync<double[]>(
            "() => { const r = document.querySelector('svg').getBoundingClientRect(); return [r.width, r.height]; }"
        );

        Assert.Equal(sheet.WidthMm * PixelsPerMm, shown[0], 0.1);
        Assert.Equal(sheet.HeightMm * PixelsPerMm, shown[1], 0.1);
        Assert.Empty(open.Complaints);
    }

    [Theory]
    [MemberData(nameof(Patterns))]
    public async Task Every_outline_has_its_box_and_its_length(string name)
    {
        DrawnPattern pattern = PatternOf(name);
        await using OpenPage open = await OpenAsync(pattern);
        PieceLayout layout = PieceLayout.Of(pattern, GapMm);
        foreach (LaidPiece piece in layout.Pieces)
        {
            string id = PieceWords.Layer(piece.Piece).ToLowerInvariant().Replace('_', '-');
            await AssertShownAsync(open, $"#{id} path.cut", piece.Cut, layout);
            if (piece.Piece.HasStock)
            {
                await AssertShownAsync(open, $"#{id} path.finished", piece.Finished, layout);
            }
        }
    }

    [Theory]
    [MemberData(nameof(Patterns))]
    public async Task Every_piece_says_how_many_are_cut(string name)
    {
        DrawnPattern pattern = PatternOf(name);
        await using OpenPage open = await OpenAsync(pattern);

        string[] words = await open.Page.EvaluateAsync<string[]>(
            "() => [...document.querySelectorAll('text.words')].map(t => t.textContent)"
        );

        Assert.Equal(pattern.Pieces.Length, words.Length);
        Assert.All(
            pattern.Pieces.Zip(words),
            both => Assert.Contains(both.First.Count == 2 ? ", cut two" : ", cut one", both.Second)
        );
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.CutInPictures));
    }

    [Theory]
    [MemberData(nameof(Patterns))]
    public async Task Every_hole_lies_where_it_is_drawn(string name)
    {
        DrawnPattern pattern = PatternOf(name);
        await using OpenPage open = await OpenAsync(pattern);
        PieceLayout layout = PieceLayout.Of(pattern, GapMm);
        double[][] seen = await open.Page.EvaluateAsync<double[][]>(
            "() => [...document.querySelectorAll('circle')].map(c => { const b = c.getBBox(); return [b.x + b.width / 2, b.y + b.height / 2, b.width]; })"
        );
        Circle[] holes = [.. layout.Pieces.SelectMany(piece => piece.Holes).Select(hole => hole.Circle)];
        Assert.Equal(holes.Length, seen.Length);
        foreach ((Circle hole, double[] circle) in holes.Zip(seen))
        {
            Point expected = OnPicture(hole.Centre, layout);
            Assert.Equal(expected.X, circle[0], SeenMm);
            Assert.Equal(expected.Y, circle[1], SeenMm);
            Assert.Equal(hole.DiameterMm, circle[2], SeenMm);
        }
    }

    private static async Task AssertShownAsync(OpenPage open, string selector, Outline outline, PieceLayout layout)
    {
        double[] seen = await open.Page.EvaluateAsync<double[]>(
            string.Create(
                CultureInfo.InvariantCulture,
                $"() => {{ const p = document.querySelector('{selector}'); const b = p.getBBox(); return [b.x, b.y, b.width, b.height, p.getTotalLength()]; }}"
            )
        );
        Box box = outline.Bounds;
        Point corner = OnPicture(new Point(box.MinX, box.MaxY), layout);
        Assert.Equal(corner.X, seen[0], SeenMm);
        Assert.Equal(corner.Y, seen[1], SeenMm);
        Assert.Equal(box.WidthMm, seen[2], SeenMm);
        Assert.Equal(box.HeightMm, seen[3], SeenMm);

        // The browser adds up chords.
        Assert.Equal(outline.PerimeterMm, seen[4], 1e-4 * outline.PerimeterMm);
    }

    private static DrawnPattern PatternOf(string name) =>
        name == "one" ? SamplePatterns.Rough : SamplePairs.Of(name).First;

    private static Point OnPicture(Point point, PieceLayout layout) =>
        new(point.X + EdgeMm, layout.Bounds.MaxY + EdgeMm - point.Y);

    private async Task<OpenPage> OpenAsync(DrawnPattern pattern)
    {
        string picture = PatternSvg.Write("Dunnock & <son>", pattern);
        string inline = picture[picture.IndexOf("<svg", StringComparison.Ordinal)..];
        return await chromium.OpenAsync($"<!doctype html><body style=\"margin:0\">{inline}</body>", 1200);
    }
}
