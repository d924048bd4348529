namespace Flushback.Cli.Commands;

/// <summary>What <c>regress --help</c> says before the options.</summary>
internal static class RegressHelp
{
    /// <summary>The job of the command, and examples.</summary>
    public const string Description = """
        Checks every drawing (.dxf) and pattern (.yaml) below a folder and holds readings, findings, the lift between the
        stops and outlines against the baselines that lie beside the files, such as wagtail.dxf.baseline.json. Of a pattern
        of two blades both are checked.

        Exit codes: 0 all as before, 1 something is changed, new, gone or in error, 2 the folder or its settings cannot be
        read, 3 no server answered. With --update, 0 when nothing is in error.

        A file library.yaml in a folder says how its files and those below are checked: options of check without their
        hyphens, under 'all' for every file and under 'files' by name; under 'leave-out' what is no drawing or pattern.

        Examples:
          flushback regress library --update
          flushback regress library --out results
          flushback regress library --server https://knives.example:8443 --jobs 16
        """;
}
