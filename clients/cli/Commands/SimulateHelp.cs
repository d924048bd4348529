using Flushback.Cli.Arguments;

namespace Flushback.Cli.Commands;

/// <summary>What <c>simulate --help</c> says before the options.</summary>
internal static class SimulateHelp
{
    /// <summary>The job of the command, the forms of a pass, and examples.</summary>
    public static string Description { get; } =
        $"""
            Makes passes on the drawing of a knife and prints what the dial would show after each, set to zero open.

            A pass says what is done, where and by how much. Depths count at the contacts of the stop a face serves: front
            towards the blade as opened, rear towards the handle; depth= gives both. Nothing is written to the drawing; to
            undo a pass leave it out.

              {string.Join("\n  ", PassText.Examples)}

            Examples:
              flushback simulate knife.dxf --pass 'round open-corner radius=0.5mm'
              flushback simulate knife.dxf --passes passes.yaml --out passes
            """;
}
