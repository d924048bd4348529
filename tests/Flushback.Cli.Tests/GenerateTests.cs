using System.Text;
using Flushback.Cli.Tests.Running;

namespace Flushback.Cli.Tests;

public sealed class GenerateTests : IDisposable
{
    private static readonly string[] _files =
    [
        "contacts.dxf",
        "cut-sheet.dxf",
        "lift-curve.csv",
        "pattern.dxf",
        "pattern.svg",
        "report.html",
        "report.json",
        "report.txt",
        "template.pdf",
    ];

    private readonly Workbench _bench = new();

    [Fact]
    public async Task A_page_to_begin_with_is_written_and_drawn_as_it_is()
    {
        string page = _bench.PathOf("heron.yaml");

        Ending begun = await Client.RunAsync("generate", "--new", page);
        Ending drawn = await Client.RunAsync("generate", "--pattern", page, "--out", _bench.PathOf("heron"));

        Assert.Equal((0, "", ""), (begun.ExitCode, begun.Output, begun.Error));
        Assert.Equal((0, ""), (drawn.ExitCode, drawn.Error));
        Assert.StartsWith("heron\n====", drawn.Output, StringComparison.Ordinal);
        Assert.Equal(["heron", "heron.yaml", .. _files.Select(file => $"heron/{file}")], _bench.Contents);
        Assert.Equal(drawn.Output, File.ReadAllText(_bench.PathOf("heron/report.txt")));
    }

    [Fact]
    public async Task The_page_to_begin_with_names_every_dimension_with_its_limits()
    {
        string page = _bench.PathOf("heron.yaml");
        await Client.RunAsync("generate", "--new", page);

        string[] lines = File.ReadAllLines(page);

        Assert.Contains("  closed-length: 92 mm", lines);
        Assert.Contains("  # length:", lines);
        Assert.Contains("  half-stop: yes", lines);
        Assert.Contains("  family: clip point", lines);
        string text = string.Join(' ', lines.Select(line => line.Trim().TrimStart('#').Trim()));
        Assert.Contains(
            "Length of the handle, from its front end to its butt. 40 to 150 mm.",
            text,
            StringComparison.Ordinal
        );
        Assert.All(lines, line => Assert.True(line.Length <= 110, line));
    }

    [Fact]
    public async Task The_page_to_begin_with_tells_what_a_second_blade_needs_and_draws_it_once_its_arrangement_is_named()
    {
        string path = _bench.PathOf("heron.yaml");
        await Client.RunAsync("generate", "--new", path);

        string page = File.ReadAllText(path);
        string text = string.Join(' ', page.Split('\n').Select(line => line.Trim().TrimStart('#').Trim()));
        Assert.Contains(
            "One of one blade, shared spring, two springs. arrangement: one blade",
            text,
            StringComparison.Ordinal
        );
        Assert.Contains("  first-thickness: 1.8 mm\n", page, StringComparison.Ordinal);
        Assert.Contains("0 to 5 mm. liner-between: 0.5 mm", text, StringComparison.Ordinal);
        Assert.Contains("Its own tang, blade, readings:", text, StringComparison.Ordinal);
        Assert.EndsWith("\n# free: [spring.preload, pins.centre-behind]\n", page, StringComparison.Ordinal);

        Put(
            page.Replace("arrangement: one blade", "arrangement: two springs", StringComparison.Ordinal)
                .Replace("# free:", "free:", StringComparison.Ordinal)
                .Replace("second-blade:\n", "second-blade:\n  blade:\n    length: 50 mm\n", StringComparison.Ordinal)
        );
        Ending drawn = await Client.RunAsync("generate", "--pattern", _bench.PathOf("page.yaml"), "--json");

        Assert.Equal((0, ""), (drawn.ExitCode, drawn.Error));
        Assert.Equal(50, Wire.GenerateResponse.Parser.ParseJson(drawn.Output).Second.Pattern.Dimensions.Blade.LengthMm);
    }

    [Fact]
    public async Task A_page_that_is_there_is_not_written_over()
    {
        string page = Put("name: Heron\n");

        Ending ending = await Client.RunAsync("generate", "--new", page);

        Assert.Equal(2, ending.ExitCode);
        Assert.Equal([$"'{page}' is there already; name another file, or take it away first."], ending.Complaints);
        Assert.Equal("name: Heron\n", File.ReadAllText(page));
    }

    [Fact]
    public async Task Readings_and_solved_dimensions_are_printed_in_both_units()
    {
        string page = Put("name: Dunnock\nreadings:\n  half-stop: 0.004 in\ntang:\n  height: 4.6 mm\n");

        Ending ending = await Client.RunAsync("generate", "--pattern", page);

        Assert.Equal(0, ending.ExitCode);
        Assert.StartsWith("Dunnock\n", ending.Output, StringComparison.Ordinal);
        Assert.Matches(@"half stop +\+4\.0 +\+0\.102 +\+3\.0 to \+5\.0", ending.Output);
        Assert.Matches(@"half-stop reading +0\.102 +4\.0 +given", ending.Output);
        Assert.Matches(@"blade length +\d+\.\d{3} +\d+\.\d +solved", ending.Output);
        Assert.Matches(@"\d+ more keep their defaults\.", ending.Output);
    }

    [Theory]
    [InlineData("3.2")]
    [InlineData("3.2 mm")]
    [InlineData("3.2mm")]
    [InlineData("'3.2 mm'")]
    [InlineData("126 thou", 3.2004)]
    [InlineData("1/8 in", 3.175)]
    [InlineData("0.125 in", 3.175)]
    [InlineData("+3.2")]
    public async Task A_length_is_read_in_each_of_its_forms(string written, double mm = 3.2)
    {
        string page = Put($"spring:\n  width: {written}\n");

        Ending ending = await Client.RunAsync("generate", "--pattern", page, "--json");

        Assert.Equal("", ending.Error);
        Wire.GenerateResponse response = Wire.GenerateResponse.Parser.ParseJson(ending.Output);
        Assert.Equal(mm, response.Pattern.Dimensions.Spring.WidthMm, 1e-12);
    }

    [Theory]
    [InlineData("NoseDepth_mm", false)]
    [InlineData("nose_depth_mm", true)]
    [InlineData("nose_depth", true)]
    [InlineData("Nose-Depth", true)]
    public async Task A_dimension_may_be_spelt_as_in_the_contract(string key, bool isKnown)
    {
        string page = Put($"spring:\n  {key}: 3.4\n");

        Ending ending = await Client.RunAsync("generate", "--pattern", page, "--quiet");

        Assert.Equal(isKnown ? 0 : 2, ending.ExitCode);
    }

    /// <summary>A page, and what is said of it behind the name of the file.</summary>
    public static TheoryData<string, string> Complaints =>
        new()
        {
            { "tang:\n  hieght: 5 mm\n", "line 2, column 3: there is no 'hieght' in 'tang'; did you mean 'height'?" },
            { "blad:\n  width: 5 mm\n", "line 1, column 1: there is no 'blad'; did you mean 'blade'?" },
            {
                "colour: red\n",
                "line 1, column 1: there is no 'colour'; there are name, free, arrangement, second-blade, handle, pins, tang, spring, blade, readings, stock."
            },
            {
                "tang:\n  height: 5 cm\n",
                "line 2, column 11: '5 cm' is no height; write a length, such as 3.2, 3.2 mm, 1/8 in or 0.125 in."
            },
            {
                "tang:\n  shoulder: steep\n",
                "line 2, column 13: 'steep' is no shoulder; write degrees, such as 80 or 80 deg."
            },
            { "tang:\n  half-stop: perhaps\n", "line 2, column 14: 'perhaps' is no half-stop; write yes or no." },
            {
                "blade:\n  family: dagger\n",
                "line 2, column 11: 'dagger' is no family; write one of clip point, drop point, spear point, sheepsfoot, wharncliffe, pen."
            },
            { "tang: 5\n", "line 1, column 7: 'tang' holds no dimensions; write each below it as 'height: 5 mm'." },
            {
                "tang:\n  height:\n",
                "line 2, column 10: 'height' has no value; write one behind the colon, or leave the line out."
            },
            {
                "- 5\n",
                "line 1, column 1: this is no page of dimensions; begin with a group such as 'handle:' and its dimensions below, or with generate --new."
            },
            {
                "name: One\n---\nname: Two\n",
                "line 3, column 1: a second page begins here; keep each knife in a file of its own."
            },
        };

    [Theory]
    [MemberData(nameof(Complaints))]
    public async Task What_is_wrong_with_a_page_is_told_with_line_and_column(string page, string complaint)
    {
        string path = Put(page);

        Ending ending = await Client.RunAsync("generate", "--pattern", path, "--out", _bench.PathOf("out"));

        Assert.Equal(2, ending.ExitCode);
        Assert.Equal([$"'{path}', {complaint}"], ending.Complaints);
        Assert.Equal(["page.yaml"], _bench.Contents);
    }

    [Theory]
    [InlineData("tang: {height: [\n")]
    [InlineData("tang:\n\theight: 5\n")]
    [InlineData("tang:\n  height: 5\n  height: 6\n")]
    [InlineData("tang: &a\n  height: *a\n")]
    public async Task What_is_no_yaml_is_told_in_one_line(string page)
    {
        Ending ending = await Client.RunAsync("generate", "--pattern", Put(page));

        Assert.Equal(2, ending.ExitCode);
        Assert.Matches(@"^'.*page\.yaml', line \d+, column \d+: ", Assert.Single(ending.Complaints));
    }

    [Fact]
    public async Task A_number_outside_its_limits_and_numbers_in_conflict_are_told_once()
    {
        Ending outside = await Client.RunAsync("generate", "--pattern", Put("tang:\n  height: 99 mm\n"));
        Ending conflict = await Client.RunAsync(
            "generate",
            "--pattern",
            Put("handle:\n  closed-length: 60 mm\nblade:\n  length: 120 mm\n")
        );

        Assert.Equal((2, 2), (outside.ExitCode, conflict.ExitCode));
        Assert.Equal(["The tang height is 99 mm; it has to lie between 2.5 and 9 mm."], outside.Complaints);
        Assert.Contains("120.00 mm", Assert.Single(conflict.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_empty_page_is_the_knife_with_nothing_changed() =>
        Assert.Equal(0, (await Client.RunAsync("generate", "--pattern", Put(""), "--quiet")).ExitCode);

    [Theory]
    [InlineData("There is nothing to draw: name a page of dimensions with --pattern, or write one with --new.")]
    [InlineData(
        "--new writes a page and --pattern draws one; give one of the two.",
        "--new",
        "a.yaml",
        "--pattern",
        "b.yaml"
    )]
    [InlineData(
        "--paper: 'a3' is no paper that is printed on; say a4 or letter.",
        "--pattern",
        "a.yaml",
        "--paper",
        "a3"
    )]
    [InlineData("--units: 'cm' is no unit that is drawn in; say mm or in.", "--pattern", "a.yaml", "--units", "cm")]
    [InlineData(
        "--dxf: '14' is no version that is written; say r12, 2000, 2007, 2010, 2013 or 2018.",
        "--pattern",
        "a.yaml",
        "--dxf",
        "14"
    )]
    public async Task Options_that_make_no_sense_are_told(string complaint, params string[] options)
    {
        Ending ending = await Client.RunAsync(["generate", .. options]);

        Assert.Equal(2, ending.ExitCode);
        Assert.Equal([complaint], ending.Complaints);
    }

    [Fact]
    public async Task Paper_unit_and_version_reach_the_files()
    {
        Ending ending = await Client.RunAsync(
            "generate",
            "--pattern",
            Put("name: Dunnock\n"),
            "--out",
            _bench.PathOf("out"),
            "--paper",
            "letter",
            "--units",
            "in",
            "--dxf",
            "r12",
            "--handle",
            "--quiet"
        );

        Assert.Equal(("", ""), (ending.Output, ending.Error));
        Assert.Equal(
            [
                "out",
                .. _files.Append("handle-curve.csv").Select(file => $"out/{file}").Order(StringComparer.Ordinal),
                "page.yaml",
            ],
            _bench.Contents
        );
        Assert.Contains("AC1009", File.ReadAllText(_bench.PathOf("out/pattern.dxf")), StringComparison.Ordinal);
        string pdf = Encoding.Latin1.GetString(File.ReadAllBytes(_bench.PathOf("out/template.pdf")));
        Assert.Matches(@"/MediaBox ?\[0 0 (612 792|792 612)\]", pdf);
        Ending check = await Client.RunAsync("check", _bench.PathOf("out/pattern.dxf"), "--quiet");
        Ending inspection = await Client.RunAsync("inspect", _bench.PathOf("out/cut-sheet.dxf"), "--quiet");
        Assert.Equal((0, 0), (check.ExitCode, inspection.ExitCode));
    }

    [Fact]
    public async Task Findings_end_with_code_1()
    {
        Ending ending = await Client.RunAsync("generate", "--pattern", Put("name: Dunnock\n"), "--finished", "--quiet");

        Assert.Equal(1, ending.ExitCode);
    }

    private string Put(string page) => _bench.Put("page.yaml", Encoding.UTF8.GetBytes(page));

    public void Dispose() => _bench.Dispose();
}
