using System.Xml.Linq;
using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Bench;
using Flushback.Mechanism.Knives;
using Flushback.Reports.Pictures;

namespace Flushback.Reports.Tests;

/// <summary>Reports of knives that went through the mechanism itself.</summary>
public sealed class RealKnivesTests
{
    private static readonly RigidMotion TurnedOver = new(Angle.FromDegrees(-25), new Vector(310, -44), Mirrored: true);

    public static TheoryData<string> Names => [.. KnifeCatalogue.All.Select(design => design.Name)];

    [Theory]
    [MemberData(nameof(Names))]
    public void Every_knife_of_the_catalogue_gets_its_reports(string name)
    {
        BenchReport report = Read(name, RigidMotion.Identity);

        string text = TextReport.Write(name, report, []);
        string page = HtmlReport.Write(name, report, []);

        Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, TextReport.Columns));
        foreach (string output in new[] { text, page, LiftCurveCsv.Write(report) })
        {
            Assert.DoesNotContain("NaN", output, StringComparison.Ordinal);
            Assert.DoesNotContain("Infinity", output, StringComparison.Ordinal);
        }
    }

    [Theory]
    [MemberData(nameof(Names))]
    public void A_drawing_turned_over_gives_pictures_that_say_the_same(string name)
    {
        BenchReport straight = Read(name, RigidMotion.Identity);
        BenchReport turned = Read(name, TurnedOver);

        foreach (StopReading reading in straight.Stops)
        {
            // Pictures are drawn in the knife's own frame; their words do not depend on how the drawing lay.
            string[] one = Words(StopPicture.Draw(straight, reading.Stop));
            string[] other = Words(StopPicture.Draw(turned, reading.Stop));
            Assert.Equal(one, other);
        }
    }

    private static string[] Words(XElement picture) =>
        [.. picture.Elements().Where(element => element.Name.LocalName == "text").Select(element => element.Value)];

    private static BenchReport Read(string name, RigidMotion toDrawing)
    {
        DrawnKnife drawn = KnifeCatalogue.All.Single(design => design.Name == name).ToDrawn(toDrawing, Angle.Zero);
        (Placement? placement, _) = KnifePlacement.Place(drawn);
        Assert.NotNull(placement);
        return BenchCheck.Run(placement, new BenchSettings());
    }
}
