using System.Globalization;
using System.Text.RegularExpressions;
using System.Xml.Linq;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Reports.Pictures;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests.Pictures;

public sealed partial class StopPictureTests
{
    [Theory]
    [InlineData(Stop.Open)]
    [InlineData(Stop.HalfStop)]
    [InlineData(Stop.Closed)]
    public void Arcs_are_drawn_as_arcs_and_lines_as_lines(Stop stop)
    {
        BenchReport report = SampleReports.InOrder();
        XElement picture = StopPicture.Draw(report, stop);

        DrawsEveryEdge(Path(picture, "fb-blade"), report.Placement.Knife.Blade);
        DrawsEveryEdge(Path(picture, "fb-spring"), report.Placement.Knife.Spring);
        DrawsEveryEdge(Path(picture, "fb-handle"), report.Placement.Knife.Handle!);
    }

    [Fact]
    public void An_arc_on_a_picture_passes_through_the_middle_of_the_edge_it_draws()
    {
        BenchReport report = SampleReports.InOrder();
        Outline blade = report.Placement.Knife.Blade;
        string data = Path(StopPicture.Draw(report, Stop.Open), "fb-blade");

        Point[] starts = [.. EndPoint().Matches(data).Select(ReadEnd)];
        foreach ((Edge edge, Match arc, Point start) in ArcsOf(blade, data, starts))
        {
            // Two decimals of a picture unit, worst for an arc near a half circle: a tenth of a unit, 0.004 mm here.
            Point wanted = OnPicture(edge.PointAt(0.5), blade, starts);
            Assert.True(wanted.IsWithin(0.1, MiddleOf(start, arc)), $"{wanted} is not {MiddleOf(start, arc)}");
        }
    }

    [Fact]
    public void Contacts_bear_the_numbers_of_the_tables_through_all_stops()
    {
        BenchReport report = SampleReports.InOrder();

        Assert.Equal(["1", "2"], Numbers(StopPicture.Draw(report, Stop.Open)));
        Assert.Equal(["3", "4"], Numbers(StopPicture.Draw(report, Stop.HalfStop)));
        Assert.Equal(["5", "6"], Numbers(StopPicture.Draw(report, Stop.Closed)));
    }

    [Fact]
    public void A_picture_says_in_words_what_it_shows()
    {
        XElement picture = StopPicture.Draw(SampleReports.InOrder(), Stop.HalfStop);
        XNamespace svg = picture.Name.Namespace;

        Assert.Equal("img", picture.Attribute("role")?.Value);
        Assert.Equal("Tang and nose at the half stop", picture.Element(svg + "title")?.Value);
        Assert.Equal(
            "The dial reads +5.0 thou. Two contacts, 8.38 mm apart. Contact 3: closed corner on underside. "
                + "Contact 4: open corner on underside.",
            picture.Element(svg + "desc")?.Value
        );
    }

    [Fact]
    public void Numbers_of_contacts_that_lie_together_do_not_cover_each_other()
    {
        BenchReport report = SampleReports.InOrder();
        StopReading open = report.Stops[0];
        Contact first = open.Contacts[0];
        StopReading crowded = open with
        {
            Contacts = [first, first, first with { At = first.At + new Vector(0.1, 0) }],
        };

        XElement picture = StopPicture.Draw(report with { Stops = [crowded, .. report.Stops.Skip(1)] }, Stop.Open);

        Point[] discs =
        [
            .. picture
                .Elements()
                .Where(element => element.Attribute("class")?.Value == "fb-number")
                .Select(element => new Point(Read(element.Attribute("x")!.Value), Read(element.Attribute("y")!.Value))),
        ];
        Assert.Equal(3, discs.Length);
        Assert.True(discs[0].DistanceTo(discs[1]) >= 30);
        Assert.True(discs[0].DistanceTo(discs[2]) >= 30);
        Assert.True(discs[1].DistanceTo(discs[2]) >= 30);
    }

    [Fact]
    public void A_stop_the_knife_has_not_cannot_be_drawn() =>
        Assert.Throws<ArgumentException>(() => StopPicture.Draw(SampleReports.WithoutHalfStop(), Stop.HalfStop));

    private static void DrawsEveryEdge(string data, Outline outline)
    {
        Assert.Equal(outline.Edges.Count(edge => edge.IsArc), data.Count(letter => letter == 'A'));
        Assert.Equal(outline.Edges.Count(edge => !edge.IsArc), data.Count(letter => letter == 'L'));
        Assert.EndsWith("Z", data, StringComparison.Ordinal);
    }

    private static IEnumerable<(Edge, Match, Point Start)> ArcsOf(Outline outline, string data, Point[] ends)
    {
        Queue<Match> arcs = new(ArcCommand().Matches(data));
        for (int i = 0; i < outline.Edges.Length; i++)
        {
            if (outline.Edges[i].IsArc)
            {
                yield return (outline.Edges[i], arcs.Dequeue(), ends[i]);
            }
        }
    }

    // The map from the drawing to the picture, told from two corners the path itself names: blade open, so no turn.
    private static Point OnPicture(Point point, Outline outline, Point[] corners)
    {
        Point a = outline.Edges[0].Start;
        Edge far = outline.Edges.MaxBy(edge => edge.Start.DistanceTo(a));
        Point farDrawn = corners[outline.Edges.IndexOf(far)];
        double scale = (farDrawn.X - corners[0].X) / (far.Start.X - a.X);
        return new Point(corners[0].X + ((point.X - a.X) * scale), corners[0].Y - ((point.Y - a.Y) * scale));
    }

    // Centre of an SVG arc of equal radii: SVG 1.1, appendix F.6.5, with y down; the middle lies across the chord.
    private static Point MiddleOf(Point start, Match arc)
    {
        double radius = Read(arc.Groups["r"].Value);
        bool large = arc.Groups["large"].Value == "1";
        bool sweep = arc.Groups["sweep"].Value == "1";
        Point end = new(Read(arc.Groups["x"].Value), Read(arc.Groups["y"].Value));
        Vector half = (start - end) * 0.5;
        double root = Math.Sqrt(Math.Max(0, (radius * radius / half.LengthSquared) - 1));
        double sign = large == sweep ? -1 : 1;
        Point chord = start.MidpointTo(end);
        Vector toCentre = new Vector(half.Y, -half.X) * (sign * root);
        return chord + toCentre - (toCentre.Normalized * (large ? -radius : radius));
    }

    private static string Path(XElement picture, string cssClass) =>
        picture.Elements().Single(element => element.Attribute("class")?.Value == cssClass).Attribute("d")!.Value;

    private static IEnumerable<string> Numbers(XElement picture) =>
        picture
            .Elements()
            .Where(element => element.Attribute("class")?.Value == "fb-number")
            .Select(element => element.Value);

    private static Point ReadEnd(Match match) => new(Read(match.Groups[1].Value), Read(match.Groups[2].Value));

    private static double Read(string text) => double.Parse(text, NumberStyles.Float, CultureInfo.InvariantCulture);

    [GeneratedRegex(@"A(?<r>\S+) \S+ 0 (?<large>[01]) (?<sweep>[01]) (?<x>[-\d.]+) (?<y>[-\d.]+)")]
    private static partial Regex ArcCommand();

    [GeneratedRegex(@"([-\d.]+) ([-\d.]+)(?=[LAZ]|$)")]
    private static partial Regex EndPoint();
}
