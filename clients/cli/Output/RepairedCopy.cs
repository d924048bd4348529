using Flushback.Contract.V1;

namespace Flushback.Cli.Output;

/// <summary>Where the repaired copy of a drawing goes.</summary>
internal static class RepairedCopy
{
    /// <summary>The copy as a file to write.</summary>
    /// <param name="place">A file, or a folder: one that is there, or a name with a slash at its end.</param>
    /// <param name="inputPath">The drawing that was read.</param>
    /// <param name="artifacts">What the service made, the copy among it.</param>
    public static OutputFile At(string place, string inputPath, IEnumerable<Artifact> artifacts)
    {
        bool isFolder = Directory.Exists(place) || Path.EndsInDirectorySeparator(place);
        string name = $"{Path.GetFileNameWithoutExtension(inputPath)}-repaired.dxf";
        return new OutputFile(
            isFolder ? Path.Combine(place, name) : place,
            artifacts.First(artifact => artifact.Kind == ArtifactKind.RepairedDxf).Content
        );
    }
}
