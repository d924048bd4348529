using Flushback.Catalogue.Designs;
using Flushback.Cli.Tests.Running;
using Flushback.Service.Tests.Inputs;

namespace Flushback.Cli.Tests.Regression;

/// <summary>The file in a library's folders that says how its files are checked.</summary>
public sealed class SettingsTests : IDisposable
{
    private readonly LibraryOnDisk _library = LibraryOnDisk.OfFour();

    [Fact]
    public async Task Options_hold_for_a_folder_and_below_and_those_of_a_file_go_over_them()
    {
        // A drawing that states no unit is refused until one is said.
        byte[] silent = LooseDrawing.Of(KnifeCatalogue.Wagtail.ToDrawn(), units: null).ToBytes();
        _library.Put("silent.dxf", silent);
        _library.Put("round/silent.dxf", silent);
        Assert.Equal(["round/silent.dxf", "silent.dxf"], Errors((await _library.OutcomesAsync()).Outcomes));

        _library.Put("library.yaml", "all:\n  unit: mm\n");
        Assert.Empty(Errors((await _library.OutcomesAsync()).Outcomes));

        _library.Put("round/library.yaml", "files:\n  silent.dxf:\n    blade-layer: SHELL\n");
        Assert.Equal(["round/silent.dxf"], Errors((await _library.OutcomesAsync()).Outcomes));
    }

    [Fact]
    public async Task Another_option_is_another_check()
    {
        await _library.UpdateAsync();
        _library.Put("library.yaml", "all:\n  handle: yes\n  width: 3.2mm\nfiles:\n  wagtail.dxf:\n    handle: no\n");

        var after = await _library.OutcomesAsync();

        Assert.All(after.Outcomes, item => Assert.Equal("changed", item.Value));
        Assert.Contains("in the handle, pull", after.All.ToJsonString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task What_is_said_of_the_handle_for_all_leaves_a_shared_spring_on_the_bench()
    {
        _library.Put("library.yaml", "all:\n  width: 3.2mm\n");
        _library.Put("wren.yaml", TwoBladesTests.Wren);
        await _library.UpdateAsync();

        Assert.DoesNotContain(
            "in the handle, pull",
            File.ReadAllText(_library.PathOf("wren.yaml.baseline.json")),
            StringComparison.Ordinal
        );
        Assert.Contains(
            "in the handle, pull",
            File.ReadAllText(_library.PathOf("wader.yaml.baseline.json")),
            StringComparison.Ordinal
        );

        _library.Put("library.yaml", "files:\n  wren.yaml:\n    width: 3.2mm\n");
        var after = await _library.OutcomesAsync();
        Assert.Contains(
            "gives 'width' for a shared spring, which is read on the bench only",
            after.All["items"]!.AsArray().Single(IsError)!["errors"]![0]!.GetValue<string>(),
            StringComparison.Ordinal
        );
    }

    [Fact]
    public async Task What_is_left_out_is_no_item()
    {
        _library.Put("passes.yaml", "passes:\n  - round: open-corner\n    radius: 1mm\n");
        Assert.Equal(["passes.yaml"], Errors((await _library.OutcomesAsync()).Outcomes));

        _library.Put("library.yaml", "leave-out: [passes.yaml]\n");
        Assert.DoesNotContain("passes.yaml", (await _library.OutcomesAsync()).Outcomes.Keys);
    }

    [Fact]
    public async Task What_a_new_baseline_allows_is_said_by_unit()
    {
        _library.Put("library.yaml", "within:\n  mm: 0.02\n  outline: 0.1\n");
        await _library.UpdateAsync();
        _library.Put("wagtail.dxf", LibraryOnDisk.WagtailWithALongerHandle(0.05));

        Assert.Contains(
            "\"within_mm\": 0.1",
            File.ReadAllText(_library.PathOf("wagtail.dxf.baseline.json")),
            StringComparison.Ordinal
        );
        Assert.Equal(0, (await _library.OutcomesAsync()).ExitCode);
    }

    [Theory]
    [InlineData("every: {}", "line 1: has 'every', which is none of all, files, leave-out, within")]
    [InlineData("all: [", "cannot be read as YAML")]
    [InlineData("all: unit", "line 1: has a word where names with values are wanted")]
    [InlineData("all:\n  unit:\n    of: mm", "line 3: has a value that is no single word")]
    [InlineData("within:\n  mm: none", "line 2: allows 'none' mm, which is no number above zero")]
    [InlineData("within:\n  miles: 1", "line 2: has 'miles', which is none of mm, deg,")]
    public async Task Settings_that_are_none_are_refused_with_their_line(string text, string said)
    {
        _library.Put("library.yaml", text);

        Ending ending = await _library.RegressAsync();

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains(said, Assert.Single(ending.Complaints), StringComparison.Ordinal);
        Assert.Equal("", ending.Output);
    }

    [Theory]
    [InlineData("all:\n  colour: red", "gives 'colour', which is no option of check")]
    [InlineData("all:\n  unit: yards", "'yards' is not a unit")]
    [InlineData("all:\n  handle: perhaps", "gives 'handle' another value than yes or no")]
    [InlineData("files:\n  wader.yaml:\n    unit: mm", "gives 'unit' for a pattern")]
    public async Task An_option_that_is_none_is_an_error_of_the_files_it_is_for(string text, string said)
    {
        _library.Put("library.yaml", text);

        var after = await _library.OutcomesAsync();

        Assert.Equal(1, after.ExitCode);
        Assert.Contains(
            said,
            after.All["items"]!.AsArray().Last(IsError)!["errors"]![0]!.GetValue<string>(),
            StringComparison.Ordinal
        );
    }

    /// <inheritdoc/>
    public void Dispose() => _library.Dispose();

    private static bool IsError(System.Text.Json.Nodes.JsonNode? item) =>
        item!["outcome"]!.GetValue<string>() == "error";

    private static string[] Errors(Dictionary<string, string> outcomes) =>
        [.. outcomes.Where(item => item.Value == "error").Select(item => item.Key)];
}
