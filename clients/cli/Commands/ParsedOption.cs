using System.CommandLine;
using System.CommandLine.Parsing;
using System.Diagnostics.CodeAnalysis;

namespace Flushback.Cli.Commands;

/// <summary>Options whose values are read by the parsers of <c>Arguments</c>, with their complaints.</summary>
internal static class ParsedOption
{
    /// <summary>Reads a text; false when it is none of its kind.</summary>
    public delegate bool Parser<T>(string text, [MaybeNullWhen(false)] out T value);

    /// <summary>An option with one value.</summary>
    /// <param name="name">Name with its hyphens.</param>
    /// <param name="helpName">What stands for the value in the help.</param>
    /// <param name="description">What it does, and what holds without it.</param>
    /// <param name="parse">Reads the value.</param>
    /// <param name="complaint">What is wrong with a text that is none.</param>
    public static Option<T> One<T>(
        string name,
        string helpName,
        string description,
        Parser<T> parse,
        Func<string, string> complaint
    ) =>
        new(name)
        {
            HelpName = helpName,
            Description = description,
            CustomParser = result => Read(result, result.Tokens[0].Value, parse, complaint),
        };

    /// <summary>An option that may be given several times.</summary>
    /// <inheritdoc cref="One"/>
    public static Option<List<T>> Many<T>(
        string name,
        string helpName,
        string description,
        Parser<T> parse,
        Func<string, string> complaint
    ) =>
        new(name)
        {
            HelpName = helpName,
            Description = description,
            Arity = ArgumentArity.OneOrMore,
            CustomParser = result => [.. result.Tokens.Select(token => Read(result, token.Value, parse, complaint)!)],
        };

    private static T? Read<T>(ArgumentResult result, string text, Parser<T> parse, Func<string, string> complaint)
    {
        if (parse(text, out T? value))
        {
            return value;
        }

        // The complaint says what the text should be; which option it is about comes first.
        string option = (result.Parent as OptionResult)?.Option.Name ?? "";
        result.AddError($"{option}: {complaint(text)}");
        return default;
    }
}
