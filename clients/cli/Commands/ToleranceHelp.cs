namespace Flushback.Cli.Commands;

/// <summary>What <c>tolerance --help</c> says before the options.</summary>
internal static class ToleranceHelp
{
    /// <summary>The job of the command, and examples.</summary>
    public const string Description = """
        Draws random parts of a knife within its tolerances, reads each on the bench, and prints how the readings are
        spread, what share lies within the targets, and which tolerance to tighten first.

        A tolerance is how far off to either side; play lies between none and what is given. The same seed draws the same
        parts on every machine. Ends with 0, or with 1 when fewer parts than --want read within their targets.

        Examples:
          flushback tolerance knife.dxf --pins 0.02mm --profile 0.03mm
          flushback tolerance knife.dxf --pins 0.02mm --profile 0.03mm --face-profile half-stop-face=0.01mm --want 95%
          flushback tolerance knife.dxf --profile 1thou --distribution normal --parts 20000 --seed 7 --out spread
          flushback tolerance knife.dxf --pins 0.02mm --handle --width 3.2mm --width-off 0.05mm --preload-off 0.1mm
        """;
}
