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
        or 0.125 in; without a unit they are millimetres. 'arrangement' puts a second blade into the handle, which
        'second-blade' describes.

        --pull changes the page before it is drawn, as little as gives that pull in the handle under the stress of
        --most-stress: depth of the spring at nose, centre pin and rear pin, place of the centre pin, preload, or what
        --vary says of them. --fit changes what the page leaves out until nothing is found. A list in the page says what
        may be changed instead, such as free: [spring.preload, pins.centre-behind]. What was changed is printed, and --out
        writes the changed page as pattern.yaml.

        Examples:
          flushback generate --new heron.yaml
          flushback generate --pattern heron.yaml
          flushback generate --pattern heron.yaml --out heron
          flushback generate --pattern heron.yaml --out heron --paper letter --units in --dxf r12
          flushback generate --pattern heron.yaml --handle --json
          flushback generate --pattern heron.yaml --pull 14N --most-stress 900 --out heron
          flushback generate --pattern heron.yaml --fit --handle
        """;
}
