namespace Flushback.Cli.Commands;

/// <summary>What <c>plan --help</c> says before the options.</summary>
internal static class PlanHelp
{
    /// <summary>The job of the command, and examples.</summary>
    public static string Description { get; } =
        """
            Plans the least metal to take off so that every stop reads as wanted, and prints the passes in the order to make
            them with the reading to expect after each; or says what stands in the way and what would do it. Exit code 0
            when the targets are reached, 1 when they are not.

            With --out it writes the plan as page, text and JSON, your drawing with the corrected outlines and the metal to
            take off on layers of ours, a card of one sheet for the bench, and the passes as simulate takes them.

            Examples:
              flushback plan knife.dxf
              flushback plan knife.dxf --finished --relief 3thou --out plan
              flushback plan knife.dxf --measured half-stop=9thou,closed=22thou
            """;
}
