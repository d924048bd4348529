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
        if (!item.IsPattern)
        {
            ParseResult options = Parse(item);
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
        ParseResult ofPage = Parse(item, isOnBenchOnly: page.Arrangement == Arrangement.SharedSpring);
        PatternCheckRequest pattern = new()
        {
            Pattern = page.Pattern,
            Arrangement = page.Arrangement,
            SecondBlade = page.SecondBlade,
            Bench = _bench.ToSettings(ofPage),
            Handle = _handle.ToSettings(ofPage),
            WithOutlines = true,
        };
        return new CheckManyRequest { Pattern = pattern };
    }

    /// <summary>What tells one request from every other: a hash over file and options.</summary>
    public static string KeyOf(CheckManyRequest request) =>
        Convert.ToHexStringLower(SHA256.HashData(request.ToByteArray()));

    // What is given for all leaves alone what it does not concern: how to read a drawing a page, and the handle a spring with
    // a nose at either end, which is read on the bench only.
    private ParseResult Parse(LibraryItem item, bool isOnBenchOnly = false)
    {
        Option[] ofDrawings = [.. _knife.All];
        Option[] ofHandle = [.. _handle.All];
        Command command = new("check");
        foreach (Option option in (Option[])[.. ofDrawings, .. _bench.All, .. ofHandle])
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
            string? elsewhere =
                item.IsPattern && ofDrawings.Contains(option) ? "a pattern; it says how to read a drawing"
                : isOnBenchOnly && ofHandle.Contains(option)
                    ? "a shared spring, which is read on the bench only; leave it out"
                : null;
            if (elsewhere is null)
            {
                words.AddRange(WordsOf(option, given));
            }
            else if (!given.IsForAll && WordsOf(option, given).Any())
            {
                throw new BadInputException($"'{given.File}' gives '{name}' for {elsewhere}.");
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
