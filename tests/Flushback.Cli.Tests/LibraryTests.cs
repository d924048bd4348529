using System.Diagnostics;
using System.Runtime.CompilerServices;
using Flushback.Cli.Tests.Running;

namespace Flushback.Cli.Tests;

/// <summary>The library of knives under clients/samples/library.</summary>
public class LibraryTests
{
    public static TheoryData<string> Pages => [.. Named("*.yaml")];

    public static TheoryData<string> Drawings => [.. Named("*.dxf")];

    [Fact]
    public void It_holds_twenty_knives_and_more() =>
        Assert.True(Pages.Count + Drawings.Count >= 20, $"{Pages.Count} pages, {Drawings.Count} drawings");

    [Theory]
    [MemberData(nameof(Pages))]
    public async Task Every_page_is_drawn_and_reads_what_it_wants(string name) =>
        AssertClean(await Client.RunAsync("generate", "--pattern", Path.Combine(Folder(), name), "--quiet"));

    [Theory]
    [MemberData(nameof(Drawings))]
    public async Task Every_drawing_reads_as_before_fitting(string name) =>
        AssertClean(await Client.RunAsync("check", Path.Combine(Folder(), name), "--quiet"));

    [Fact]
    public async Task It_holds_two_blades_in_either_arrangement()
    {
        string[] pages = await Task.WhenAll(
            Named("*.yaml").Select(name => File.ReadAllTextAsync(Path.Combine(Folder(), name)))
        );

        Assert.Contains(pages, page => page.Contains("arrangement: shared spring\n", StringComparison.Ordinal));
        Assert.Contains(pages, page => page.Contains("arrangement: two springs\n", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Every_drawing_is_what_the_program_draws_of_its_page_today()
    {
        using Workbench bench = new();
        using Process script = Process.Start(
            "python3",
            [
                Path.Combine(Folder(), "..", "draw_library.py"),
                Path.GetDirectoryName(bench.PathOf("."))!,
                "dotnet",
                Path.Combine(AppContext.BaseDirectory, "flushback.dll"),
            ]
        );
        await script.WaitForExitAsync();

        Assert.Equal(0, script.ExitCode);
        Assert.Equal(Named("*.dxf"), bench.Contents);
        Assert.Equal(
            Named("*.dxf"),
            Directory
                .EnumerateFiles(Path.Combine(Folder(), "..", "drawings"), "*.yaml")
                .Select(page => Path.GetFileNameWithoutExtension(page) + ".dxf")
                .Order(StringComparer.Ordinal)
        );
        Assert.All(
            Named("*.dxf"),
            name =>
                Assert.True(
                    File.ReadAllBytes(Path.Combine(Folder(), name))
                        .AsSpan()
                        .SequenceEqual(File.ReadAllBytes(bench.PathOf(name))),
                    $"{name} is not what draw_library.py draws: run it and look at what changed."
                )
        );
    }

    [Fact]
    public void The_readme_names_every_knife()
    {
        string readme = File.ReadAllText(Path.Combine(Folder(), "README.md"));
        Assert.All(
            Named("*.yaml").Concat(Named("*.dxf")),
            name => Assert.Contains($"| `{name}` |", readme, StringComparison.Ordinal)
        );
    }

    private static void AssertClean(Ending ending) =>
        Assert.Equal((0, "", ""), (ending.ExitCode, ending.Output, ending.Error));

    private static IEnumerable<string> Named(string pattern) =>
        Directory
            .EnumerateFiles(Folder(), pattern)
            .Select(path => Path.GetFileName(path))
            .Order(StringComparer.Ordinal);

    private static string Folder([CallerFilePath] string thisFile = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(thisFile)!, "..", "..", "clients", "samples", "library"));
}
