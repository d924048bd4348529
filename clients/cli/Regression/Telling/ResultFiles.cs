using Flushback.Cli.Output;
using Flushback.Cli.Regression.Items;
using Flushback.Cli.Regression.Running;
using Google.Protobuf;

namespace Flushback.Cli.Regression.Telling;

/// <summary>The files of a run.</summary>
internal static class ResultFiles
{
    /// <summary>Writes all of them, or none.</summary>
    /// <exception cref="Commands.BadInputException">One cannot be written.</exception>
    public static void Write(string output, LibraryFolder folder, IReadOnlyList<ItemResult> results)
    {
        OutputFiles.Write(
            [
                File("index.html", IndexPage.Write(results, Path.GetFileName(folder.Root))),
                File("regress.json", ResultsJson.Write(results)),
                File("junit.xml", JUnitXml.Write(results)),
                File("regress.txt", SummaryText.Write(results)),
            ],
            folder.Root
        );

        OutputFile File(string name, string text) => new(Path.Combine(output, name), ByteString.CopyFromUtf8(text));
    }
}
