using System.CommandLine;
using System.Security.Cryptography;
using Flushback.Cli.Commands;
using Flushback.Cli.Patterns;
using Flushback.Contract.V1;
using Google.Protobuf;

namespace Flushback.Cli.Regression.Items;

/// <summary>Makes the request of an item from its file and the options its settings give.</summary>
internal sealed class ItemRequests(LibrarySettings settings)
{
    private readonly KnifeOptions _knife = new();
    private readonly BenchOptions _bench = new();
    private readonly HandleOptions _handle = new();

    /// <summary>The item to send, without an id.</summary>
    /// <exception cref="BadInputException">The file cannot be read, or its settings give an option that is none.</exception>
    public async Task<CheckManyRequest> ReadAsync(LibraryItem item, CancellationToken cancellation)
    {
        ParseResult options = Parse(item);
        if (!item.IsPattern)
        {
            byte[] dxf = await DrawingFile.ReadAsync(item.File, cancellation);
            CheckRequest check = new()
            {
                Knife = _knife.ToKnife(options, dxf),
                Bench = _bench.ToSettings(options),
                Handle = _handle.ToSettings(options),
                WithOutlines = true,
            };
            return new CheckManyRequest { Check = check };
        }

        NamedPattern page = await PatternFile.ReadAsync(item.File, cancellation);
        if (page.Arrangement is not (Arrangement.Unspecified or Arrangement.OneBlade))
        {
            throw new BadInputException(
                $"'{item.Path}' draws two blades, and a library takes pages of one: have it drawn by generate, which checks both, and put its drawings there."
            );
        }

        PatternCheckRequest pattern = new()
        {
            Pattern = page.Pattern,
            Bench = _bench.ToSettings(options),
            Handle = _handle.ToSettings(options),
            WithOutlines = true,
        };
        return new CheckManyRequest { Pattern = pattern };
    }

    /// <summary>What tells one request from every other: a hash over file and options.</summary>
    public static string KeyOf(CheckManyRequest request) =>
        Convert.ToHexStringLower(SHA256.HashData(request.ToByteArray()));

    private ParseResult Parse(LibraryItem item)
    {
        Option[] ofDrawings = [.. _knife.All];
        Option[] ofAll = [.. _bench.All, .. _handle.All];
        Command command = new("check");
        foreach (Option option in (Option[])[.. ofDrawings, .. ofAll])
        {
            command.Add(option);
        }

        List<string> words = [];
        foreach ((string name, GivenOption given) in settings.OptionsOf(item))
        {
            Option option =
                command.Options.FirstOrDefault(known => known.Name == $"--{name}")
                ?? throw new BadInputException(
                    $"'{given.File}' gives '{name}', which is no option of check that can stand there."
                );
            bool isOfDrawings = Array.Exists(ofDrawings, known => known == option);
            if (!item.IsPattern || !isOfDrawings)
            {
                words.AddRange(WordsOf(option, given));
            }
            else if (!given.IsForAll)
            {
                throw new BadInputException(
                    $"'{given.File}' gives '{name}' for a pattern; it says how to read a drawing."
                );
            }
        }

        ParseResult parsed = command.Parse(words);
        return parsed.Errors.Count == 0
            ? parsed
            : throw new BadInputException($"The settings of '{item.Path}' cannot be used: {parsed.Errors[0].Message}");
    }

    private static IEnumerable<string> WordsOf(Option option, GivenOption given)
    {
        if (option.ValueType != typeof(bool))
        {
            return given.Values.Select(value => $"{option.Name}={value}");
        }

        return given.Values switch
        {
            ["yes" or "true"] => [option.Name],
            ["no" or "false"] => [],
            _ => throw new BadInputException(
                $"'{given.File}' gives '{option.Name[2..]}' another value than yes or no."
            ),
        };
    }
}
