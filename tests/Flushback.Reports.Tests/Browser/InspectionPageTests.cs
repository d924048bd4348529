using Flushback.Inspection.Repair;
using Flushback.Reports.Tests.Fixtures;
using Microsoft.Playwright;

namespace Flushback.Reports.Tests.Browser;

public sealed class InspectionPageTests(Chromium chromium) : IClassFixture<Chromium>
{
    private const int Phone = 380;
    private const int Desk = 1280;

    [Theory]
    [MemberData(nameof(Inspections.Names), MemberType = typeof(Inspections))]
    public async Task The_page_opens_without_a_complaint_and_fetches_nothing(string name)
    {
        await using OpenPage open = await chromium.OpenAsync(Inspections.Page(name), Desk);

        Assert.Empty(open.Complaints);
    }

    [Theory]
    [InlineData(Phone, "parts-narrow", "parts")]
    [InlineData(Desk, "parts", "parts-narrow")]
    public async Task The_picture_of_the_parts_is_seen_once(int width, string seen, string unseen)
    {
        await using OpenPage open = await chromium.OpenAsync(Inspections.Page("inspection-bad"), width);

        LocatorBoundingBoxResult? box = await open.Page.Locator($"svg#{seen}").BoundingBoxAsync();
        Assert.NotNull(box);
        Assert.InRange(box.Width, width * 0.7, width);
        Assert.InRange(box.Height, 100, Desk);
        Assert.False(await open.Page.Locator($"svg#{unseen}").IsVisibleAsync());
    }

    [Theory]
    [InlineData("inspection-sound", Phone)]
    [InlineData("inspection-bad", Phone)]
    [InlineData("inspection-nothing", Phone)]
    [InlineData("inspection-sound", Desk)]
    [InlineData("inspection-bad", Desk)]
    public async Task No_word_runs_out_of_the_window_or_of_a_picture(string name, int width)
    {
        await using OpenPage open = await chromium.OpenAsync(Inspections.Page(name), width);

        Assert.Equal(width, await open.Page.EvaluateAsync<int>(Probes.Width));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.OutsideTheirPlace));
        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.CutInPictures));
    }

    [Theory]
    [InlineData(Phone, 20)]
    [InlineData(Desk, 40)]
    public async Task Every_number_in_the_picture_covers_no_other_and_can_be_read(int width, int least)
    {
        string page = InspectionHtmlReport.Write("Crowded", Inspections.Crowded(40, layers: 8));
        await using OpenPage open = await chromium.OpenAsync(page, width);

        // Digits in a disc: their boxes, and how tall they are on the screen.
        double[][] boxes = await open.Page.EvaluateAsync<double[][]>(
            """
            [...document.querySelectorAll('svg text.fb-number')]
                .map(t => t.getBoundingClientRect())
                .filter(r => r.width > 0)
                .map(r => [r.left, r.top, r.right, r.bottom])
            """
        );

        // A phone has no room for all of them: the lesser ones are dots there.
        Assert.InRange(boxes.Length, least, 40);
        Assert.All(boxes, box => Assert.InRange(box[3] - box[1], 10, 40));
        for (int i = 0; i < boxes.Length; i++)
        {
            for (int j = 0; j < i; j++)
            {
                bool overlaps =
                    boxes[i][0] < boxes[j][2]
                    && boxes[j][0] < boxes[i][2]
                    && boxes[i][1] < boxes[j][3]
                    && boxes[j][1] < boxes[i][3];
                Assert.False(overlaps, $"{i + 1} and {j + 1}");
            }
        }
    }

    [Theory]
    [InlineData(ColorScheme.Light)]
    [InlineData(ColorScheme.Dark)]
    public async Task Words_stand_out_from_their_ground(ColorScheme scheme)
    {
        await using OpenPage open = await chromium.OpenAsync(Inspections.Page("inspection-bad"), Desk, scheme);

        Assert.Empty(await open.Page.EvaluateAsync<string[]>(Probes.FaintWords));
    }

    [Fact]
    public async Task A_script_in_a_name_or_a_layer_does_not_run()
    {
        const string Script = "<script>document.title='run'</script>";
        string page = InspectionHtmlReport.Write(
            Script,
            Inspections.Bad() with
            {
                CutLayers = [Script],
                Findings =
                [
                    Inspections.Bad().Findings[0] with
                    {
                        Layer = Script,
                        Message = Script,
                        Handles = [Script],
                    },
                ],
            },
            new RepairedDrawing([], [Script], [Script])
        );
        await using OpenPage open = await chromium.OpenAsync(page, Desk);

        Assert.Equal($"{Script}: inspection before cutting", await open.Page.TitleAsync());
        Assert.Equal(0, await open.Page.Locator("script").CountAsync());
    }
}
