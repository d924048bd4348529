using System.CommandLine;
using Flushback.Cli.Arguments;
using Flushback.Contract.V1;

namespace Flushback.Cli.Commands;

/// <summary>The options that say which passes are made, and what has to be left.</summary>
internal sealed class PassOptions
{
    private readonly Option<string?> _file = new("--passes")
    {
        HelpName = "FILE",
        Description = "A file of passes, as YAML; those of --pass come after it.",
    };

    private readonly Option<List<Pass>> _passes = ParsedOption.Many<Pass>(
        "--pass",
        "PASS",
        "A pass, such as 'round open-corner radius=0.5mm'; may be repeated, and the order counts.",
        PassText.TryParse,
        PassText.Complaint
    );

    private readonly Option<double?> _wall = ParsedOption.One<double?>(
        "--pin-wall",
        "LENGTH",
        "Least metal to leave around a pin's hole; 0.8 mm without it.",
        Length.TryParse,
        Length.Complaint
    );

    /// <summary>All of them, in the order of the help.</summary>
    public IEnumerable<Option> All => [_passes, _file, _wall];

    /// <summary>The passes, in their order.</summary>
    /// <exception cref="BadInputException">There are none, or the file holds none.</exception>
    public async Task<IReadOnlyList<Pass>> ReadAsync(ParseResult parsed, CancellationToken cancellation)
    {
        List<Pass> passes = [];
        if (parsed.GetValue(_file) is { } path)
        {
            passes.AddRange(await PassFile.ReadAsync(path, cancellation));
        }

        passes.AddRange(parsed.GetValue(_passes) ?? []);
        return passes.Count > 0
            ? passes
            : throw new BadInputException(
                "No pass is given; name one with --pass, such as --pass 'round open-corner radius=0.5mm', or a file with --passes."
            );
    }

    /// <summary>What has to be left; null to leave it to the service.</summary>
    public PassSettings? ToSettings(ParseResult parsed) =>
        parsed.GetValue(_wall) is { } mm ? new PassSettings { LeastPinWallMm = mm } : null;
}
