namespace Flushback.Cli.Commands;

/// <summary>What <c>generate --help</c> says before the options.</summary>
internal static class GenerateHelp
{
    /// <summary>The job of the command, and examples.</summary>
    public const string Description = """
        Draws blade, spring and handle from a page of dimensions, so that the dial reads what the page asks for, and prints
        the report of the check on them.

        The page is YAML. --new writes one to begin with, in which every dimension stands with its unit, default, limits
        and meaning; what is left out keeps its default or follows from the rest. Lengths are written 3.2, 3.2 mm, 1/8 in
        or 0.125 in; without a unit they are millimetres.

        Examples:
          flushback generate --new heron.yaml
          flushback generate --pattern heron.yaml
          flushback generate --pattern heron.yaml --out heron
          flushback generate --pattern heron.yaml --out heron --paper letter --units in --dxf r12
          flushback generate --pattern heron.yaml --handle --json
        """;
}
