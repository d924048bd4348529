using System.CommandLine;
using Flushback.Cli.Output;
using Flushback.Contract.V1;

namespace Flushback.Cli.Commands;

/// <summary>The options that say what is printed.</summary>
internal sealed class PrintOptions
{
    private readonly Option<bool> _json = new("--json") { Description = "Prints the report as JSON instead of text." };
    private readonly Option<bool> _quiet = new("--quiet") { Description = "Prints no report; the exit code tells." };

    /// <summary>All of them, in the order of the help.</summary>
    public IEnumerable<Option> All => [_json, _quiet];

    /// <summary>The file of a report that is to be printed.</summary>
    public ArtifactKind KindIn(ParseResult parsed) => parsed.GetValue(_json) ? ArtifactKind.Json : ArtifactKind.Text;

    /// <summary>True when nothing is to be printed.</summary>
    public bool IsQuietIn(ParseResult parsed) => parsed.GetValue(_quiet);

    /// <summary>Prints the report, if it is to be printed.</summary>
    public void Print(ParseResult parsed, IEnumerable<Artifact> artifacts)
    {
        if (!parsed.GetValue(_quiet))
        {
            Screen.Print(artifacts, KindIn(parsed));
        }
    }
}
