using Flushback.Catalogue.Designs;
using Flushback.Service.Tests.Inputs;

namespace Flushback.Cli.Tests.Running;

/// <summary>A folder with drawings in it, gone after the test.</summary>
public sealed class Workbench : IDisposable
{
    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("flushback-cli-test-");

    /// <summary>A path in the folder.</summary>
    public string PathOf(string name) => Path.Combine(_folder.FullName, name);

    /// <summary>Writes a drawing and gives its path.</summary>
    internal string Put(string name, LooseDrawing drawing) => Put(name, drawing.ToBytes());

    /// <summary>Writes bytes and gives their path.</summary>
    public string Put(string name, byte[] bytes)
    {
        File.WriteAllBytes(PathOf(name), bytes);
        return PathOf(name);
    }

    /// <summary>A knife that reads as it should before fitting.</summary>
    public string PutClean() => Put("wagtail.dxf", LooseDrawing.Of(KnifeCatalogue.Wagtail.ToDrawn()));

    /// <summary>A knife whose flats lie on flats.</summary>
    public string PutFlawed() => Put("curlew.dxf", LooseDrawing.Of(KnifeCatalogue.Curlew.ToDrawn()));

    /// <summary>Everything in the folder, by path within it.</summary>
    public IEnumerable<string> Contents =>
        Directory
            .EnumerateFileSystemEntries(_folder.FullName, "*", SearchOption.AllDirectories)
            .Select(path => Path.GetRelativePath(_folder.FullName, path))
            .Order(StringComparer.Ordinal);

    /// <inheritdoc/>
    public void Dispose() => _folder.Delete(recursive: true);
}
