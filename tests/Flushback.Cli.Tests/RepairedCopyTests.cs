using Flushback.Cli.Tests.Running;
using Flushback.Dxf.Reading;
using Flushback.Service.Tests.Inputs;

namespace Flushback.Cli.Tests;

public sealed class RepairedCopyTests : IDisposable
{
    private readonly Workbench _bench = new();

    private string Twice => _bench.Put("twice.dxf", SheetRequests.Twice());

    [Fact]
    public async Task A_repaired_copy_is_written_beside_and_each_change_is_listed()
    {
        string path = Twice;
        byte[] before = await File.ReadAllBytesAsync(path);

        Ending ending = await Client.RunAsync("inspect", path, "--fix", _bench.PathOf("fixed.dxf"));

        Assert.Equal((1, ""), (ending.ExitCode, ending.Error));
        Assert.Contains("Changed in the repaired copy", ending.Output, StringComparison.Ordinal);
        Assert.Equal(["fixed.dxf", "twice.dxf"], _bench.Contents);
        Assert.Equal(before, await File.ReadAllBytesAsync(path));

        Ending repaired = await Client.RunAsync("inspect", _bench.PathOf("fixed.dxf"));
        Assert.Equal(0, repaired.ExitCode);
        DxfReadResult read = DxfReader.Read(
            await File.ReadAllBytesAsync(_bench.PathOf("fixed.dxf")),
            DxfReadOptions.Default
        );
        Assert.Equal(5, read.Drawing!.Shapes.Length);
    }

    [Fact]
    public async Task A_repaired_copy_in_a_folder_is_named_after_the_drawing()
    {
        Directory.CreateDirectory(_bench.PathOf("there"));

        Ending there = await Client.RunAsync("inspect", Twice, "--quiet", "--fix", _bench.PathOf("there"));
        Ending made = await Client.RunAsync("inspect", Twice, "--quiet", "--fix", _bench.PathOf("made") + "/");

        Assert.Equal((1, 1), (there.ExitCode, made.ExitCode));
        Assert.Equal(
            ["made", "made/twice-repaired.dxf", "there", "there/twice-repaired.dxf", "twice.dxf"],
            _bench.Contents
        );
    }

    [Fact]
    public async Task The_drawing_is_never_written_over_by_whatever_way_it_is_named()
    {
        string path = Twice;
        byte[] before = await File.ReadAllBytesAsync(path);
        Directory.CreateSymbolicLink(_bench.PathOf("elsewhere"), Path.GetDirectoryName(path)!);
        File.CreateSymbolicLink(_bench.PathOf("link.dxf"), path);

        string[][] ways =
        [
            [path, "--fix", path],
            [path, "--fix", _bench.PathOf("elsewhere/twice.dxf")],
            [path, "--fix", _bench.PathOf("link.dxf")],
            [_bench.PathOf("link.dxf"), "--fix", path],
            [path, "--fix", Path.Combine(Path.GetDirectoryName(path)!, "elsewhere", "..", "twice.dxf")],
        ];
        foreach (string[] way in ways)
        {
            Ending ending = await Client.RunAsync(["inspect", .. way]);

            Assert.True(ending.ExitCode == 2, $"{string.Join(' ', way)}: {ending}");
            Assert.Contains("would be written over", ending.Error, StringComparison.Ordinal);
            Assert.Equal(before, await File.ReadAllBytesAsync(path));
        }
    }

    [Fact]
    public async Task When_one_of_the_files_cannot_be_written_none_is()
    {
        Directory.CreateDirectory(_bench.PathOf("report/report.txt"));

        Ending ending = await Client.RunAsync(
            "inspect",
            Twice,
            "--out",
            _bench.PathOf("report"),
            "--fix",
            _bench.PathOf("new/fixed.dxf")
        );

        Assert.Equal((2, ""), (ending.ExitCode, ending.Output));
        Assert.Contains("is a folder", ending.Error, StringComparison.Ordinal);
        Assert.Equal(["report", "report/report.txt", "twice.dxf"], _bench.Contents);
    }

    [Fact]
    public async Task Two_files_in_one_place_are_refused()
    {
        Ending ending = await Client.RunAsync(
            "inspect",
            Twice,
            "--out",
            _bench.PathOf("report"),
            "--fix",
            _bench.PathOf("report/report.json")
        );

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains("written twice", ending.Error, StringComparison.Ordinal);
        Assert.Equal(["twice.dxf"], _bench.Contents);
    }

    public void Dispose() => _bench.Dispose();
}
