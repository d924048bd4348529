using Flushback.Cli.Tests.Running;

namespace Flushback.Cli.Tests;

public sealed class SamplesTests
{
    [Theory]
    [InlineData("wagtail-half-stop.dxf", 0)]
    [InlineData("dunlin-no-half-stop.dxf", 0)]
    [InlineData("lapwing-reads-badly.dxf", 1)]
    public async Task Sample_drawings_end_as_their_names_promise(string sample, int exitCode)
    {
        Ending ending = await Client.RunAsync("check", Path.Combine(Samples(), sample));

        Assert.Equal("", ending.Error);
        Assert.Equal(exitCode, ending.ExitCode);
    }

    private static string Samples()
    {
        DirectoryInfo? folder = new(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Flushback.slnx")))
        {
            folder = folder.Parent;
        }

        return Path.Combine(folder!.FullName, "clients", "samples");
    }
}
