namespace Flushback.Cli.Commands;

/// <summary>What <c>check --help</c> says before the options.</summary>
internal static class CheckHelp
{
    /// <summary>The job of the command, and examples.</summary>
    public const string Description = """
        Reads a drawing of a blade and its spring and prints what the dial would show open, at the half stop and closed.

        The drawing is a DXF with the blade on layer BLADE, the spring on SPRING, the handle (if any) on HANDLE, and the
        pins as circles on those layers or on PINS. Any position, direction, mirroring and unit will do.

        Examples:
          flushback check knife.dxf
          flushback check knife.dxf --out report
          flushback check knife.dxf --finished --tolerance 0.001in
          flushback check knife.dxf --target half-stop=+0.005in,closed=0.015in
          flushback check knife.dxf --handle --width 3.2mm --preload 0.5mm --out report
          flushback check knife.dxf --unit in --blade-layer Klinge --spring-layer Feder
          flushback check knife.dxf --blade-angle 180 --face kick@12.5,-3mm
          flushback check knife.dxf --server http://127.0.0.1:5210 --json
        """;
}
