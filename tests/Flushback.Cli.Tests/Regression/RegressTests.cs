using System.Globalization;
using System.Text.Json.Nodes;
using Flushback.Catalogue.Designs;
using Flushback.Cli.Tests.Running;

namespace Flushback.Cli.Tests.Regression;

/// <summary>A library held against its baselines, by the client as a process.</summary>
public sealed class RegressTests : IDisposable
{
    private static readonly string[] _all = ["curlew.dxf", "round/dunlin.dxf", "wader.yaml", "wagtail.dxf"];

    private readonly LibraryOnDisk _library = LibraryOnDisk.OfFour();

    [Fact]
    public async Task A_library_without_baselines_is_new_and_the_same_once_they_are_written()
    {
        var first = await _library.OutcomesAsync();
        Assert.Equal(1, first.ExitCode);
        Assert.Equal(_all, first.Outcomes.Keys);
        Assert.All(first.Outcomes.Values, outcome => Assert.Equal("new", outcome));
        Assert.Empty(Directory.GetFiles(_library.Folder, "*.json", SearchOption.AllDirectories));

        Ending update = await _library.RegressAsync("--update");
        Assert.Equal(0, update.ExitCode);
        Assert.All(
            _all,
            name => Assert.Contains($"written    {name}.baseline.json\n", update.Output, StringComparison.Ordinal)
        );

        var then = await _library.OutcomesAsync();
        Assert.Equal(0, then.ExitCode);
        Assert.All(then.Outcomes.Values, outcome => Assert.Equal("same", outcome));
    }

    [Fact]
    public async Task A_changed_outline_is_caught_though_no_reading_changes()
    {
        await _library.UpdateAsync();
        _library.Put("wagtail.dxf", LibraryOnDisk.WagtailWithALongerHandle(0.05));

        var after = await _library.OutcomesAsync();

        Assert.Equal(1, after.ExitCode);
        Assert.Equal(["wagtail.dxf"], Named(after.Outcomes, "changed"));
        string sentence = Assert.Single(SentencesOf(after.All, "wagtail.dxf"));
        Assert.StartsWith("handle, outline: off by up to 0.04", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task An_outline_off_by_less_than_is_allowed_is_the_same()
    {
        await _library.UpdateAsync();
        _library.Put("wagtail.dxf", LibraryOnDisk.WagtailWithALongerHandle(0.0008));

        Assert.Equal(0, (await _library.OutcomesAsync()).ExitCode);
    }

    [Fact]
    public async Task A_changed_number_is_caught_and_one_within_its_allowance_is_not()
    {
        await _library.UpdateAsync();
        ChangeLift(byMm: 0.0004);
        Assert.Equal(0, (await _library.OutcomesAsync()).ExitCode);

        ChangeLift(byMm: 0.0002);
        var after = await _library.OutcomesAsync();

        Assert.Equal(1, after.ExitCode);
        string sentence = Assert.Single(SentencesOf(after.All, "wagtail.dxf"));
        Assert.StartsWith("half stop, lift: 0.127 mm (5.0 thou), was 0.1276 mm", sentence, StringComparison.Ordinal);
        Assert.EndsWith("; 0.0005 mm are allowed.", sentence, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_lift_that_is_off_between_the_stops_is_caught_with_the_stretch_and_by_how_much()
    {
        await _library.UpdateAsync();
        string path = _library.PathOf("wagtail.dxf.baseline.json");
        JsonNode baseline = JsonNode.Parse(File.ReadAllText(path))!;
        JsonNode curve = baseline["curves"]!["lift"]!;
        string[] lifts = curve["is"]!.GetValue<string>().Split(' ');
        Assert.Equal(35, lifts.Length);
        foreach ((int angle, double byMm) in ((int, double)[])[(40, 0.0004), (45, 0.02), (50, 0.079), (120, -0.01)])
        {
            lifts[(angle / 5) - 1] = FormattableString.Invariant(
                $"{double.Parse(lifts[(angle / 5) - 1], CultureInfo.InvariantCulture) - byMm:0.####}"
            );
        }

        curve["is"] = string.Join(' ', lifts);
        File.WriteAllText(path, baseline.ToJsonString());

        var after = await _library.OutcomesAsync();

        Assert.Equal(
            [
                "lift, curve: the lift between 45 and 50 degrees differs by up to 0.079 mm (3.11 thou), most at 50 degrees; 0.0005 mm are allowed.",
                "lift, curve: the lift at 120 degrees differs by up to 0.01 mm (0.39 thou); 0.0005 mm are allowed.",
            ],
            SentencesOf(after.All, "wagtail.dxf")
        );
    }

    [Fact]
    public async Task A_rounder_corner_changes_the_lift_between_the_stops_and_no_reading()
    {
        _library.Put("wader.yaml", "tang:\n  open-corner-radius: 0.3 mm\n");
        await _library.UpdateAsync();
        _library.Put("wader.yaml", "tang:\n  open-corner-radius: 0.35 mm\n");

        string[] sentences = [.. SentencesOf((await _library.OutcomesAsync()).All, "wader.yaml")];

        Assert.Contains(
            sentences,
            sentence => sentence.StartsWith("lift, curve: the lift between ", StringComparison.Ordinal)
        );
        Assert.DoesNotContain(sentences, sentence => sentence.StartsWith("half stop, lift:", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Another_knife_in_the_same_file_changes_readings_contacts_and_outlines()
    {
        await _library.UpdateAsync();
        _library.Put("wagtail.dxf", KnifeCatalogue.Curlew.ToDrawn());

        var after = await _library.OutcomesAsync();

        string[] sentences = [.. SentencesOf(after.All, "wagtail.dxf")];
        foreach (
            string of in (string[])["verdict", "findings", "half stop, contacts", "closed, contacts", "blade, outline"]
        )
        {
            Assert.Contains(sentences, sentence => sentence.StartsWith($"{of}: ", StringComparison.Ordinal));
        }
    }

    [Fact]
    public async Task A_changed_dimension_of_a_pattern_is_caught()
    {
        await _library.UpdateAsync();
        _library.Put("wader.yaml", "readings:\n  half-stop: 0.11 mm\n");

        var after = await _library.OutcomesAsync();

        Assert.Equal(["wader.yaml"], Named(after.Outcomes, "changed"));
        Assert.Contains(
            SentencesOf(after.All, "wader.yaml"),
            sentence => sentence.StartsWith("half stop, lift: 0.11 mm", StringComparison.Ordinal)
        );
    }

    [Fact]
    public async Task An_added_and_a_deleted_file_are_caught_and_settled_by_an_update()
    {
        await _library.UpdateAsync();
        File.Delete(_library.PathOf("curlew.dxf"));
        _library.Put("added.DXF", KnifeCatalogue.Sandpiper.ToDrawn());

        var after = await _library.OutcomesAsync();
        Assert.Equal(1, after.ExitCode);
        Assert.Equal(["added.DXF"], Named(after.Outcomes, "new"));
        Assert.Equal(["curlew.dxf"], Named(after.Outcomes, "gone"));

        Ending update = await _library.RegressAsync("--update");
        Assert.Contains("written    added.DXF.baseline.json\n", update.Output, StringComparison.Ordinal);
        Assert.Contains("taken away curlew.dxf.baseline.json\n", update.Output, StringComparison.Ordinal);
        Assert.Equal(0, (await _library.OutcomesAsync()).ExitCode);
    }

    [Fact]
    public async Task What_cannot_be_checked_is_told_and_keeps_its_baseline()
    {
        await _library.UpdateAsync();
        byte[] baseline = File.ReadAllBytes(_library.PathOf("curlew.dxf.baseline.json"));
        _library.Put("curlew.dxf", "no drawing");
        _library.Put("wader.yaml", "readings:\n  half-stop: 9 mm\n");

        var after = await _library.OutcomesAsync("--update");

        Assert.Equal(1, after.ExitCode);
        Assert.Equal(["curlew.dxf", "wader.yaml"], Named(after.Outcomes, "error"));
        Assert.Equal(baseline, File.ReadAllBytes(_library.PathOf("curlew.dxf.baseline.json")));
        Assert.Contains(
            "This is no DXF file",
            Item(after.All, "curlew.dxf")["errors"]![0]!.GetValue<string>(),
            StringComparison.Ordinal
        );
    }

    [Theory]
    [InlineData("{", "it cannot be read as JSON")]
    [InlineData("{}", "it does not say \"baseline\": 1")]
    [InlineData("{\"baseline\": 1}", "something is missing or of another kind")]
    public async Task A_baseline_that_is_none_is_told_and_not_written_over(string text, string said)
    {
        await _library.UpdateAsync();
        _library.Put("wagtail.dxf.baseline.json", text);

        var after = await _library.OutcomesAsync("--update");

        Assert.Equal(1, after.ExitCode);
        Assert.Equal(["wagtail.dxf"], Named(after.Outcomes, "error"));
        Assert.Contains(
            said,
            Item(after.All, "wagtail.dxf")["errors"]![0]!.GetValue<string>(),
            StringComparison.Ordinal
        );
        Assert.Equal(text, File.ReadAllText(_library.PathOf("wagtail.dxf.baseline.json")));
    }

    [Fact]
    public async Task An_update_keeps_what_was_allowed_by_hand_and_leaves_alone_what_is_the_same()
    {
        await _library.UpdateAsync();
        string path = _library.PathOf("wagtail.dxf.baseline.json");
        File.WriteAllText(
            path,
            File.ReadAllText(path).Replace("\"within\": 0.01 ", "\"within\": 0.25 ", StringComparison.Ordinal)
        );
        byte[] byHand = File.ReadAllBytes(path);
        await _library.UpdateAsync();
        Assert.Equal(byHand, File.ReadAllBytes(path));

        _library.Put("wagtail.dxf", LibraryOnDisk.WagtailWithALongerHandle(0.05));
        await _library.UpdateAsync();

        Assert.NotEqual(byHand, File.ReadAllBytes(path));
        Assert.Contains("\"within\": 0.25 ", File.ReadAllText(path), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Results_are_the_same_byte_for_byte_however_many_items_are_under_way()
    {
        await _library.UpdateAsync();
        _library.Put("wagtail.dxf", LibraryOnDisk.WagtailWithALongerHandle(0.05));
        File.Delete(_library.PathOf("curlew.dxf"));

        Ending one = await _library.RegressAsync("--out", _library.Beside("one"), "--jobs", "1");
        Ending many = await _library.RegressAsync("--out", _library.Beside("many"), "--jobs", "40");

        Assert.Equal((1, 1, ""), (one.ExitCode, many.ExitCode, one.Error));
        Assert.Equal(one.Output, many.Output);
        string[] names = [.. Directory.GetFiles(_library.Beside("one")).Select(path => Path.GetFileName(path)!)];
        Assert.Equal(["index.html", "junit.xml", "regress.json", "regress.txt"], names.Order(StringComparer.Ordinal));
        Assert.All(
            names,
            name =>
                Assert.Equal(
                    File.ReadAllBytes(Path.Combine(_library.Beside("one"), name)),
                    File.ReadAllBytes(Path.Combine(_library.Beside("many"), name))
                )
        );
    }

    [Fact]
    public async Task Results_may_lie_in_the_library_and_are_no_part_of_it()
    {
        await _library.UpdateAsync();
        _library.Put("results/left-over.dxf", KnifeCatalogue.Wagtail.ToDrawn());

        var after = await _library.OutcomesAsync("--out", _library.PathOf("results"));

        Assert.Equal(0, after.ExitCode);
        Assert.Equal(_all, after.Outcomes.Keys);
    }

    [Fact]
    public async Task Nothing_but_baselines_is_written_into_the_library()
    {
        string[] before = Files();
        await _library.RegressAsync();
        Assert.Equal(before, Files());

        await _library.UpdateAsync();
        Assert.Equal(
            before.Concat(_all.Select(name => $"{name}.baseline.json")).Order(StringComparer.Ordinal),
            Files()
        );
    }

    [Fact]
    public async Task A_folder_that_is_none_is_refused()
    {
        Ending none = await Client.RunAsync("regress", _library.PathOf("nowhere"));
        Ending file = await Client.RunAsync("regress", _library.PathOf("wagtail.dxf"));

        Assert.Equal((2, 2), (none.ExitCode, file.ExitCode));
        Assert.Contains("There is no folder", Assert.Single(none.Complaints), StringComparison.Ordinal);
        Assert.Contains("is a file; name the folder", Assert.Single(file.Complaints), StringComparison.Ordinal);
    }

    /// <inheritdoc/>
    public void Dispose() => _library.Dispose();

    private string[] Files() =>
        [
            .. Directory
                .EnumerateFiles(
                    _library.Folder,
                    "*",
                    new EnumerationOptions { RecurseSubdirectories = true, AttributesToSkip = 0 }
                )
                .Select(path => Path.GetRelativePath(_library.Folder, path))
                .Order(StringComparer.Ordinal),
        ];

    private void ChangeLift(double byMm)
    {
        string path = _library.PathOf("wagtail.dxf.baseline.json");
        JsonNode baseline = JsonNode.Parse(File.ReadAllText(path))!;
        JsonNode lift = baseline["numbers"]!["half stop, lift"]!;
        lift["is"] = lift["is"]!.GetValue<double>() + byMm;
        File.WriteAllText(path, baseline.ToJsonString());
    }

    private static string[] Named(Dictionary<string, string> outcomes, string outcome) =>
        [.. outcomes.Where(item => item.Value == outcome).Select(item => item.Key)];

    private static JsonNode Item(JsonNode results, string file) =>
        results["items"]!.AsArray().Single(item => item!["file"]!.GetValue<string>() == file)!;

    private static IEnumerable<string> SentencesOf(JsonNode results, string file) =>
        Item(results, file)["changes"]!.AsArray().Select(change => change!["sentence"]!.GetValue<string>());
}
