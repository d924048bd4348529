namespace Flushback.Cli.Commands;

/// <summary>What <c>inspect --help</c> says before the options.</summary>
internal static class InspectHelp
{
    /// <summary>The job of the command, and examples.</summary>
    public const string Description = """
        Looks at a drawing as the shop that is to cut it does, and lists what would go wrong at the machine.

        Open contours and gaps, duplicates, crossings, tiny pieces, text and splines on a cut layer, inner corners, thin
        webs, holes against their pins, stock for grinding; the box, the cut length and, for a kerf, the cut path.

        Examples:
          flushback inspect knife.dxf
          flushback inspect knife.dxf --cut-layer BLADE --cut-layer SPRING --cut-layer PINS
          flushback inspect knife.dxf --cutter 1mm --web 0.04in --pin 2.4mm --pin 3/32in
          flushback inspect knife.dxf --kerf 0.2mm --out report
          flushback inspect knife.dxf --fix repaired.dxf
          flushback inspect old.dxf --guess-units --json
        """;
}
