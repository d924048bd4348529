using System.Globalization;
using Flushback.Geometry;
using Flushback.Inspection;
using Flushback.Inspection.Repair;
using Flushback.Reports.Tests.Fixtures;

namespace Flushback.Reports.Tests;

public sealed class InspectionReportTests
{
    [Theory]
    [MemberData(nameof(Inspections.Names), MemberType = typeof(Inspections))]
    public void The_text_is_the_one_kept(string name) => GoldenFile.Matches($"{name}.txt", Inspections.Text(name));

    [Theory]
    [MemberData(nameof(Inspections.Names), MemberType = typeof(Inspections))]
    public void The_page_is_the_one_kept(string name) => GoldenFile.Matches($"{name}.html", Inspections.Page(name));

    [Theory]
    [MemberData(nameof(Inspections.Names), MemberType = typeof(Inspections))]
    public void No_line_is_wider_than_eighty_columns_and_every_letter_is_plain(string name)
    {
        string text = Inspections.Text(name);

        Assert.All(text.Split('\n'), line => Assert.InRange(line.Length, 0, 80));
        Assert.DoesNotContain(text, character => character is < ' ' and not '\n' or > '~');
    }

    [Fact]
    public void A_size_stands_in_millimetres_and_in_inches()
    {
        string text = Inspections.Text("inspection-sound");

        // 1 in is 25.4 mm by definition: 60 by 12 mm are 2.362 by 0.472 in.
        Assert.Matches(@"1 +LINER +4 +mm +60\.00 x 12\.00 +[\d.]+ +[\d.]+\n +in +2\.362 x 0\.472 ", text);
        Assert.Matches(@"x 6\.00 +mm +2\.4050 +2\.4 mm +2\.4000 to 2\.4100 +fits\n +y 6\.00 +in +0\.0947 ", text);
    }

    [Fact]
    public void A_hole_that_does_not_fit_says_by_how_much()
    {
        string text = Inspections.Text("inspection-bad");

        Assert.Contains("0.0400 over", text, StringComparison.Ordinal);
        Assert.Contains("0.0175 under", text, StringComparison.Ordinal);
    }

    [Fact]
    public void The_verdict_counts_faults_and_warnings()
    {
        Assert.Contains("Ready to cut", Inspections.Text("inspection-sound"), StringComparison.Ordinal);
        Assert.Contains(
            "Cannot be cut as drawn: 1 fault and 3 warnings.",
            Inspections.Text("inspection-bad"),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public void Many_entities_are_counted_after_the_first_twelve() =>
        Assert.Contains("4A, 4B and 28 more", Inspections.Text("inspection-bad"), StringComparison.Ordinal);

    [Fact]
    public void Changes_are_listed_only_when_a_copy_was_made()
    {
        Assert.DoesNotContain("repaired copy", Inspections.Text("inspection-sound"), StringComparison.Ordinal);
        Assert.Contains(Inspections.Copy.Repairs[0], Inspections.Text("inspection-bad"), StringComparison.Ordinal);
        Assert.Contains("Nothing: there was nothing", Inspections.Text("inspection-nothing"), StringComparison.Ordinal);
    }

    [Fact]
    public void A_layer_cannot_steer_the_terminal()
    {
        string text = InspectionTextReport.Write(
            "Heron\u001b[31m",
            Inspections.Bad() with
            {
                CutLayers = ["\u001b]0;x\u0007"],
                Repairs = ["mended\u0007"],
                Findings = [Inspections.Bad().Findings[0] with { Layer = "\u001bS", Message = "a\r\nb" }],
            },
            new RepairedDrawing([], ["changed\u202e"], ["left\u0007"])
        );

        Assert.DoesNotContain(text, character => character is < ' ' and not '\n' or > '~');
    }

    [Theory]
    [MemberData(nameof(Inspections.Names), MemberType = typeof(Inspections))]
    public void No_language_of_the_machine_changes_a_byte(string name)
    {
        (string Text, string Page) before = (Inspections.Text(name), Inspections.Page(name));
        CultureInfo culture = CultureInfo.CurrentCulture;
        try
        {
            // Decimal commas, another minus and other digits' grouping, made by hand: globalisation may be off.
            CultureInfo other = (CultureInfo)CultureInfo.InvariantCulture.Clone();
            other.NumberFormat.NumberDecimalSeparator = ",";
            other.NumberFormat.NegativeSign = "~";
            CultureInfo.CurrentCulture = other;

            Assert.Equal(before, (Inspections.Text(name), Inspections.Page(name)));
        }
        finally
        {
            CultureInfo.CurrentCulture = culture;
        }
    }

    [Fact]
    public void Findings_of_one_kind_on_one_layer_are_counted_after_the_fifth()
    {
        string text = InspectionTextReport.Write("Crowded", Inspections.Crowded(500));

        Assert.Contains("5. WARNING: Segment number 5 is", text, StringComparison.Ordinal);
        Assert.DoesNotContain("Segment number 6 is", text, StringComparison.Ordinal);
        Assert.Contains("And 495 more findings MICRO_SEGMENT on layer LINER that are", text, StringComparison.Ordinal);
        Assert.Contains("500 warnings", text, StringComparison.Ordinal);
    }

    [Fact]
    public void Findings_beyond_what_a_picture_holds_are_dots()
    {
        string page = InspectionHtmlReport.Write("Crowded", Inspections.Crowded(500, layers: 100));

        // A picture for a desk and one for a phone, 60 discs each at most; a dot for every finding in both.
        Assert.InRange(page.Split("class=\"fb-number\"").Length - 1, 60, 120);
        Assert.Equal(1000, page.Split("r=\"4.5\"").Length - 1);
    }

    [Fact]
    public void A_narrow_part_makes_no_picture_taller_than_a_screen()
    {
        InspectionReport sound = Inspections.Sound();
        Box tall = new(0, 0, 4, 400);
        string page = InspectionHtmlReport.Write("Tall", sound with { Bounds = tall, Parts = [], CutPaths = [] });

        string[] box = page.Split("viewBox=\"")[1].Split('"')[0].Split(' ');

        Assert.InRange(
            double.Parse(box[3], CultureInfo.InvariantCulture) / double.Parse(box[2], CultureInfo.InvariantCulture),
            0.5,
            1.2
        );
    }
}
