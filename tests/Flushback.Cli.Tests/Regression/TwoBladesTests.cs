using System.Text.Json.Nodes;
using System.Xml.Linq;
using Flushback.Cli.Tests.Running;

namespace Flushback.Cli.Tests.Regression;

/// <summary>Pages of two blades in a library: both blades are kept, compared and shown.</summary>
public sealed class TwoBladesTests : IDisposable
{
    internal const string Wren = """
        arrangement: shared spring
        handle:
          closed-length: 82 mm
          taper: 0
        pins:
          rear-diameter: 1.4 mm
        tang:
          height: 4.4 mm
        spring:
          nose-depth: 3.2 mm
        blade:
          family: spear point
        second-blade:
          tang:
            height: 4.4 mm
          blade:
            family: pen
            length: 44 mm
          readings:
            half-stop: 3 thou
            closed: 10 thou
        """;

    private const string Shrike = """
        arrangement: two springs
        handle:
          closed-length: 94 mm
          front: 7 mm
        second-blade:
          at-other-end: no
          tang:
            half-stop: no
            height: 4.6 mm
          blade:
            family: pen
            length: 54 mm
        """;

    private readonly LibraryOnDisk _library = LibraryOnDisk.Of(("shrike.yaml", Shrike), ("wren.yaml", Wren));

    [Fact]
    public async Task Both_blades_are_kept_under_names_that_tell_them_apart_and_are_the_same_again()
    {
        await _library.UpdateAsync();

        JsonNode wren = Baseline("wren.yaml");
        Assert.Equal("shared spring", wren["words"]!["arrangement"]!.GetValue<string>());
        Assert.Equal(0.127, Number(wren, "first blade, half stop, lift"), 1e-6);
        Assert.Equal(0.0762, Number(wren, "second blade, half stop, lift"), 1e-6);
        Assert.Equal(["first blade, lift", "second blade, lift"], Names(wren["curves"]));
        Assert.Equal(
            5,
            Names(wren["numbers"]).Count(name => name.StartsWith("between the blades, ", StringComparison.Ordinal))
        );
        Assert.Equal(
            [
                "within_mm",
                "first blade",
                "spring",
                "handle",
                "second blade",
                "first pivot",
                "centre pin",
                "second pivot",
            ],
            Names(wren["outlines"])
        );
        Assert.Equal(
            [
                "within_mm",
                "first blade",
                "first spring",
                "handle",
                "second blade",
                "second spring",
                "pivot",
                "centre pin",
                "rear pin",
            ],
            Names(Baseline("shrike.yaml")["outlines"])
        );
        Assert.Equal(0, (await _library.OutcomesAsync()).ExitCode);
    }

    [Fact]
    public async Task The_second_blade_is_kept_where_it_lies_in_the_handle_of_the_first()
    {
        await _library.UpdateAsync();

        // At the other end of a handle of 82 mm, whose front lies as far before one pivot as its rear behind the other.
        JsonNode outlines = Baseline("wren.yaml")["outlines"]!;
        double[] first = Numbers(outlines, "first pivot");
        double[] second = Numbers(outlines, "second pivot");
        double[] pin = Numbers(outlines, "centre pin");
        double[] xs = [.. outlines["handle"]!.GetValue<string>().Split(", ").Select(at => Numbers(at)[0])];
        Assert.Equal((0, 0, 0), (first[0], first[1], second[1]));
        Assert.Equal(xs.Max() - first[0], second[0] - xs.Min(), 1e-3);
        Assert.Equal((first[0] + second[0]) / 2, pin[0], 1e-3);
        Assert.True(outlines["second blade"]!.GetValue<string>().Split(", ").Min(at => Numbers(at)[0]) < xs.Min());
    }

    [Theory]
    [InlineData("wren.yaml", "half-stop: 3 thou", "half-stop: 4 thou", "second blade, half stop, lift: 0.1016 mm")]
    [InlineData("wren.yaml", "length: 44 mm", "length: 44.4 mm", "second blade, outline: off by up to")]
    [InlineData("wren.yaml", "length: 44 mm", "length: 44.4 mm", "between the blades, first open, second turns: ")]
    [InlineData("shrike.yaml", "height: 4.6 mm", "height: 4.7 mm", "second blade, lift, curve: the lift between ")]
    [InlineData("shrike.yaml", "height: 4.6 mm", "height: 4.7 mm", "second spring, outline: off by up to")]
    public async Task A_change_of_the_second_blade_is_told_of_it(string page, string was, string now, string said)
    {
        string[] sentences = await ToldOfAsync(page, was, now);

        Assert.Contains(sentences, sentence => sentence.StartsWith(said, StringComparison.Ordinal));
        Assert.DoesNotContain(
            sentences,
            sentence => sentence.StartsWith("first blade, half stop", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task Another_arrangement_is_told() =>
        Assert.Contains(
            "arrangement: two springs, was shared spring.",
            await ToldOfAsync("wren.yaml", "shared spring", "two springs")
        );

    [Fact]
    public async Task Summary_and_JUnit_and_page_show_both_blades()
    {
        await _library.UpdateAsync();
        _library.Put("wren.yaml", Wren.Replace("length: 44 mm", "length: 44.4 mm", StringComparison.Ordinal));

        Ending ending = await _library.RegressAsync("--out", _library.Beside("out"));

        Assert.Contains("second blade, outline: off by up to", ending.Output, StringComparison.Ordinal);
        Assert.Contains("second blade, outline: off by up to", Written("junit.xml"), StringComparison.Ordinal);
        string page = Written("index.html");
        XElement body = XElement.Parse(
            page[
                page.IndexOf("<body>", StringComparison.Ordinal)..page.LastIndexOf("</html>", StringComparison.Ordinal)
            ]
        );
        XElement changed = body.Descendants("section").Single();
        XNamespace svg = "http://www.w3.org/2000/svg";
        XElement whole = changed.Descendants(svg + "svg").First();
        Assert.Equal(
            ["now: handle spring blade blade", "was: handle spring blade blade"],
            whole
                .Elements(svg + "g")
                .Select(layer =>
                    $"{layer.Attribute("class")!.Value}: {string.Join(' ', layer.Elements(svg + "path").Select(path => path.Attribute("class")!.Value))}"
                )
        );
        Assert.Contains("second blade, outline, close up", changed.ToString(), StringComparison.Ordinal);
        string[] cells = [.. body.Descendants("tbody").Elements("tr").Last().Elements("td").Select(cell => cell.Value)];
        Assert.Equal(["", "+5.0 | +3.0", "+15.0 | +10.0", "good | good", "changed"], cells);
    }

    /// <inheritdoc/>
    public void Dispose() => _library.Dispose();

    /// <summary>What is told of a page when words of it are changed.</summary>
    private async Task<string[]> ToldOfAsync(string page, string was, string now)
    {
        await _library.UpdateAsync();
        string text = File.ReadAllText(_library.PathOf(page));
        _library.Put(page, text.Replace(was, now, StringComparison.Ordinal));

        JsonNode item = (await _library.OutcomesAsync()).All["items"]!
            .AsArray()
            .Single(item => item!["file"]!.GetValue<string>() == page)!;

        Assert.Equal("changed", item["outcome"]!.GetValue<string>());
        return [.. item["changes"]!.AsArray().Select(change => change!["sentence"]!.GetValue<string>())];
    }

    private string Written(string name) => File.ReadAllText(Path.Combine(_library.Beside("out"), name));

    private JsonNode Baseline(string name) =>
        JsonNode.Parse(File.ReadAllText(_library.PathOf($"{name}.baseline.json")))!;

    private static string[] Names(JsonNode? node) => [.. node!.AsObject().Select(child => child.Key)];

    private static double Number(JsonNode baseline, string name) =>
        baseline["numbers"]![name]!["is"]!.GetValue<double>();

    private static double[] Numbers(JsonNode outlines, string name) => Numbers(outlines[name]!.GetValue<string>());

    private static double[] Numbers(string text) =>
        [.. text.Split(' ').Select(number => double.Parse(number, System.Globalization.CultureInfo.InvariantCulture))];
}
