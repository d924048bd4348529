using System.Text;
using Flushback.Contract.V1;

namespace Flushback.Cli.Output;

/// <summary>Standard output: the report and nothing else, so that it can be piped.</summary>
internal static class Screen
{
    /// <summary>Prints one of the files.</summary>
    /// <param name="artifacts">What the service made.</param>
    /// <param name="kind">Which to print, a text.</param>
    public static void Print(IEnumerable<Artifact> artifacts, ArtifactKind kind)
    {
        string text = artifacts.FirstOrDefault(artifact => artifact.Kind == kind)?.Content.ToStringUtf8() ?? "";
        string printable = Printable.Lines(text);
        Print(kind == ArtifactKind.Text && Colour.OnOutput ? Colour.Report(printable) : printable);
    }

    /// <summary>Prints a text as it is.</summary>
    public static void Print(string text)
    {
        using Stream output = Console.OpenStandardOutput();
        try
        {
            output.Write(Encoding.UTF8.GetBytes(text));
        }
        catch (IOException)
        {
            // The reader of the pipe has seen enough.
        }
    }
}
