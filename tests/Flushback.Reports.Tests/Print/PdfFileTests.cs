using Flushback.Geometry;
using Flushback.Reports.Print;

namespace Flushback.Reports.Tests.Print;

public class PdfFileTests
{
    private const string Words =
        "Tang 3.2 mm, \u00bd in \u00d7 1 \u00b1 0.05, 90\u00b0, \u22120.4, \u03b1 \u2013 \u00e4\u00f6\u00fc";

    [Fact]
    public void The_same_sheets_give_the_same_bytes() => Assert.Equal(Make(), Make());

    [Fact]
    public void Threads_that_write_at_once_get_the_same_bytes()
    {
        byte[] alone = Make();
        byte[][] together = new byte[64][];
        Parallel.For(0, together.Length, new ParallelOptions { MaxDegreeOfParallelism = 8 }, i => together[i] = Make());
        Assert.All(together, file => Assert.Equal(alone, file));
    }

    [Fact]
    public void Another_drawing_gets_another_id()
    {
        PrintSheet other = new(new SheetFormat(Paper.A4));
        other.Line(new Point(1, 1), new Point(2, 2), new Stroke(0.2));
        Assert.NotEqual(IdOf(Make()), IdOf(PdfFile.Write("Wagtail", [other])));
    }

    [Fact]
    public void Words_can_be_read_and_searched() =>
        Assert.Contains(Words, Poppler.Words(Make()), StringComparison.Ordinal);

    [Fact]
    public void Fonts_are_embedded()
    {
        string[] fonts = Poppler.Fonts(Make()).Split('\n', StringSplitOptions.RemoveEmptyEntries)[2..];
        Assert.NotEmpty(fonts);
        Assert.All(fonts, font => Assert.Matches(@"FLUSH[A-Z]\+DejaVu Sans.* yes +yes ", font));
    }

    [Fact]
    public void Every_sheet_is_a_page_and_the_title_is_told()
    {
        string info = Poppler.Info(Make());
        Assert.Matches(@"Title: +Wagtail", info);
        Assert.Matches(@"Pages: +2", info);
    }

    [Fact]
    public void A_place_that_is_none_is_refused()
    {
        PrintSheet sheet = new(new SheetFormat(Paper.A4));
        sheet.Line(new Point(1, double.NaN), new Point(2, 2), new Stroke(0.2));
        Assert.Throws<ArgumentException>(() => PdfFile.Write("nowhere", [sheet]));
        Assert.Throws<ArgumentException>(() => PdfFile.Write("nothing", []));
    }

    [Fact]
    public void Words_are_broken_at_their_spaces_to_a_width()
    {
        TextStyle style = new(3);
        IReadOnlyList<string> lines = PrintFonts.Lines(
            "Take the open flat down first and set the dial back",
            style,
            30
        );
        Assert.True(lines.Count > 1);
        Assert.All(lines, line => Assert.InRange(PrintFonts.WidthMm(line, style), 1, 30));
        Assert.Equal("Take the open flat down first and set the dial back", string.Join(' ', lines));
    }

    private static byte[] Make()
    {
        PrintSheet first = new(new SheetFormat(Paper.A4));
        first.Text(new Point(20, 200), Words, new TextStyle(4));
        first.Text(new Point(20, 190), "Bold", new TextStyle(4, IsBold: true), TextAnchor.Left, Angle.FromDegrees(30));
        PrintSheet second = new(new SheetFormat(Paper.Letter, IsLandscape: true));
        second.Circle(new Circle(new Point(50, 50), 20), new Stroke(0.2), new Fill(PrintColour.Grey(200)));
        return PdfFile.Write("Wagtail", [first, second]);
    }

    private static string IdOf(byte[] pdf) =>
        System.Text.RegularExpressions.Regex.Match(System.Text.Encoding.Latin1.GetString(pdf), @"/ID\[<(\w+)>").Value;
}
