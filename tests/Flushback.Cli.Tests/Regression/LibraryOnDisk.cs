using System.Text.Json.Nodes;
using Flushback.Catalogue.Designs;
using Flushback.Cli.Tests.Running;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Service.Tests.Inputs;

namespace Flushback.Cli.Tests.Regression;

/// <summary>A folder with drawings and a pattern, gone after the test, and the command that looks after it.</summary>
public sealed class LibraryOnDisk : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("flushback-library-");

    /// <summary>The library.</summary>
    public string Folder => Path.Combine(_folder.FullName, "library");

    /// <summary>A place beside the library.</summary>
    public string Beside(string name) => Path.Combine(_folder.FullName, name);

    /// <summary>A path in the library.</summary>
    public string PathOf(string name) => Path.Combine(Folder, name);

    /// <summary>Three drawings, one of them in a folder of its own, and a pattern.</summary>
    public static LibraryOnDisk OfFour()
    {
        LibraryOnDisk library = new();
        library.Put("wagtail.dxf", KnifeCatalogue.Wagtail.ToDrawn());
        library.Put("curlew.dxf", KnifeCatalogue.Curlew.ToDrawn());
        library.Put("round/dunlin.dxf", KnifeCatalogue.Dunlin.ToDrawn());
        library.Put("wader.yaml", "readings:\n  half-stop: 0.1 mm\n");
        return library;
    }

    /// <summary>Pages, by name and text.</summary>
    public static LibraryOnDisk Of(params (string Name, string Text)[] pages)
    {
        LibraryOnDisk library = new();
        foreach ((string name, string text) in pages)
        {
            library.Put(name, text);
        }

        return library;
    }

    /// <summary>Writes a drawing.</summary>
    public void Put(string name, DrawnKnife knife) => Put(name, LooseDrawing.Of(knife).ToBytes());

    /// <summary>Writes a text.</summary>
    public void Put(string name, string text) => Put(name, System.Text.Encoding.UTF8.GetBytes(text));

    /// <summary>Writes bytes.</summary>
    public void Put(string name, byte[] bytes)
    {
        Directory.CreateDirectory(Path.GetDirectoryName(PathOf(name))!);
        File.WriteAllBytes(PathOf(name), bytes);
    }

    /// <summary>Runs the command on the library.</summary>
    internal Task<Ending> RegressAsync(params string[] options) => Client.RunAsync(["regress", Folder, .. options]);

    /// <summary>Writes every baseline.</summary>
    public async Task UpdateAsync()
    {
        Ending ending = await RegressAsync("--update");
        Assert.Equal((0, ""), (ending.ExitCode, ending.Error));
    }

    /// <summary>The outcome of every item, by path, and the exit code.</summary>
    public async Task<(int ExitCode, Dictionary<string, string> Outcomes, JsonNode All)> OutcomesAsync(
        params string[] options
    )
    {
        Ending ending = await RegressAsync(["--json", .. options]);
        JsonNode results = JsonNode.Parse(ending.Output)!;
        return (
            ending.ExitCode,
            results["items"]!
                .AsArray()
                .ToDictionary(item => item!["file"]!.GetValue<string>(), item => item!["outcome"]!.GetValue<string>()),
            results
        );
    }

    /// <summary>The Wagtail with the lower rear corner of its handle farther back: another outline, the same readings.</summary>
    public static DrawnKnife WagtailWithALongerHandle(double byMm)
    {
        DrawnKnife knife = KnifeCatalogue.Wagtail.ToDrawn();
        Vertex[] vertices = [.. knife.Handle!.Vertices];
        int rear = Enumerable.Range(0, vertices.Length).MinBy(i => vertices[i].Position.X + vertices[i].Position.Y);
        vertices[rear] = new Vertex(vertices[rear].Position.X - byMm, vertices[rear].Position.Y, vertices[rear].Bulge);
        return knife with { Handle = Outline.FromVertices([.. vertices]) };
    }

    /// <inheritdoc/>
    public void Dispose() => _folder.Delete(recursive: true);
}
