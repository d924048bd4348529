using System.Text;
using Flushback.Catalogue.Designs;
using Flushback.Cli.Tests.Running;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Service.Tests.Inputs;

namespace Flushback.Cli.Tests;

public sealed class BadInputTests : IDisposable
{
    private readonly Workbench _bench = new();

    private static DrawnKnife Wagtail => KnifeCatalogue.Wagtail.ToDrawn();

    /// <summary>What is wrong, the file, and words of the sentence.</summary>
    public static TheoryData<string, byte[], string> Spoiled =>
        new()
        {
            { "an empty file", [], "empty" },
            { "a file of 5 MB", new byte[5 * 1024 * 1024], "larger than the 4,194,304 bytes allowed" },
            { "a letter", Encoding.ASCII.GetBytes("Dear maker,\nhere is the knife.\n"), "DXF" },
            { "an open blade", Parts(bladeWithout: 1), "BLADE" },
            { "a blade without a pivot", Parts(pins: [Wagtail.CentrePin]), "has no pivot" },
            { "a spring without a centre pin", Parts(pins: [Wagtail.Pivot]), "has no centre pin" },
            { "a knife of three metres", LooseDrawing.Of(Wagtail, units: 1).ToBytes(), "(option --unit)" },
            { "a drawing without a unit", LooseDrawing.Of(Wagtail, units: null).ToBytes(), "(option --unit)" },
            { "no blade layer", new LooseDrawing().Add("SPRING", Wagtail.Spring).ToBytes(), "(option --blade-layer)" },
            { "a coordinate at 1e9", LooseDrawing.Of(Wagtail, scale: 1e7).ToBytes(), "out" },
        };

    [Theory]
    [MemberData(nameof(Spoiled), DisableDiscoveryEnumeration = true)]
    public async Task Bad_drawings_exit_with_2_and_a_sentence_and_write_nothing(string what, byte[] dxf, string words)
    {
        string drawing = _bench.Put("knife.dxf", dxf);

        Ending ending = await Client.RunAsync("check", drawing, "--out", _bench.PathOf("report"));

        Assert.True(ending.ExitCode == 2, $"{what}: {ending}");
        Assert.Equal("", ending.Output);
        Assert.Equal(["knife.dxf"], _bench.Contents);
        Assert.Contains(words, ending.Error, StringComparison.Ordinal);
        Assert.All(
            ending.Complaints,
            complaint => Assert.DoesNotContain("   at ", complaint, StringComparison.Ordinal)
        );
    }

    /// <summary>Options after the file, and words of the complaint.</summary>
    public static TheoryData<string[], string> Options =>
        new()
        {
            { ["--unit", "ft"], "mm, cm, m, in or thou" },
            { ["--target", "half-stop=5"], "half-stop=+0.005in" },
            { ["--target", "open=1mm"], "open is where the dial is zeroed" },
            { ["--target", "closed=1mm,closed=2mm"], "names no target" },
            { ["--tolerance", "0,05mm"], "is not a length" },
            { ["--tolerance", "-1mm"], "(option --tolerance)" },
            { ["--step", "0"], "(option --step)" },
            { ["--step", "much"], "is not a number" },
            { ["--blade-angle", "NaN"], "is not a number" },
            { ["--blade-angle", "400"], "(option --blade-angle)" },
            { ["--dial", "1,2"], "x,y and the unit" },
            { ["--face", "kick@1"], "names no face" },
            { ["--half-stop", "maybe"], "maybe" },
            { ["--server", "localhost:5210"], "http://host:port" },
            { ["--blade-layer", "Klinge"], "has no layer 'Klinge'" },
            { ["--no-such-option"], "--no-such-option" },
        };

    [Theory]
    [MemberData(nameof(Options))]
    public async Task Bad_options_exit_with_2_and_a_sentence(string[] options, string words)
    {
        Ending ending = await Client.RunAsync(["check", _bench.PutClean(), .. options]);

        Assert.Equal(2, ending.ExitCode);
        Assert.Equal("", ending.Output);
        Assert.Contains(words, ending.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_complaint_of_a_drawing_is_a_line_of_its_own()
    {
        LooseDrawing drawing = new LooseDrawing().Add("Klinge", Wagtail.Blade).Add("Feder", Wagtail.Spring);

        Ending ending = await Client.RunAsync("check", _bench.Put("knife.dxf", drawing));

        Assert.Equal(2, ending.Complaints.Length);
        Assert.EndsWith("(option --blade-layer)", ending.Complaints[0], StringComparison.Ordinal);
        Assert.EndsWith("(option --spring-layer)", ending.Complaints[1], StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_that_is_not_there_exits_with_2()
    {
        Ending ending = await Client.RunAsync("check", _bench.PathOf("nothing.dxf"));

        Assert.Equal(2, ending.ExitCode);
        Assert.StartsWith("There is no file", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_file_without_end_exits_with_2()
    {
        Ending ending = await Client.RunAsync("check", "/dev/zero");

        Assert.Equal(2, ending.ExitCode);
        Assert.Contains("larger than any drawing", Assert.Single(ending.Complaints), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_drawing_is_never_written_over()
    {
        byte[] drawing = LooseDrawing.Of(Wagtail).ToBytes();
        string path = _bench.Put("contacts.dxf", drawing);
        Directory.CreateSymbolicLink(_bench.PathOf("elsewhere"), Path.GetDirectoryName(path)!);

        Ending direct = await Client.RunAsync("check", path, "--out", Path.GetDirectoryName(path)!);
        Ending linked = await Client.RunAsync("check", path, "--out", _bench.PathOf("elsewhere"));

        Assert.Equal((2, 2), (direct.ExitCode, linked.ExitCode));
        Assert.Contains("would be written over", direct.Error, StringComparison.Ordinal);
        Assert.Equal(drawing, await File.ReadAllBytesAsync(path));
        Assert.DoesNotContain("report.html", _bench.Contents);
    }

    [Fact]
    public async Task A_file_in_the_place_of_the_report_folder_exits_with_2()
    {
        string inTheWay = _bench.Put("report", [1, 2, 3]);

        Ending ending = await Client.RunAsync("check", _bench.PutClean(), "--out", inTheWay);

        Assert.Equal(2, ending.ExitCode);
        Assert.Equal([1, 2, 3], await File.ReadAllBytesAsync(inTheWay));
    }

    public void Dispose() => _bench.Dispose();

    private static byte[] Parts(int bladeWithout = 0, Circle[]? pins = null)
    {
        LooseDrawing drawing = new LooseDrawing()
            .Add("BLADE", Wagtail.Blade, leaveOut: bladeWithout)
            .Add("SPRING", Wagtail.Spring);
        foreach (Circle pin in pins ?? [Wagtail.Pivot, Wagtail.CentrePin])
        {
            drawing.Add("PINS", pin);
        }

        return drawing.ToBytes();
    }
}
