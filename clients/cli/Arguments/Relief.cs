using System.Diagnostics.CodeAnalysis;
using Flushback.Contract.V1;

namespace Flushback.Cli.Arguments;

/// <summary>A relief on the command line, such as <c>3thou</c> or <c>3thou,1mm</c>: its depth, and what it leaves at either end.</summary>
internal static class Relief
{
    /// <summary>What is wrong with a text that is no relief.</summary>
    public static string Complaint(string text) =>
        $"'{text}' is no relief: write its depth, and after a comma what it leaves of the face at either end, such as 3thou or 3thou,1mm.";

    /// <summary>Reads a relief.</summary>
    public static bool TryParse(string text, [NotNullWhen(true)] out ReliefWanted? relief)
    {
        string[] parts = text.Split(',');
        relief =
            parts.Length <= 2 && Length.TryParse(parts[0], out double depth)
                ? new ReliefWanted { DepthMm = depth }
                : null;
        if (relief is not null && parts.Length == 2)
        {
            bool isLength = Length.TryParse(parts[1], out double margin);
            relief.MarginMm = margin;
            relief = isLength ? relief : null;
        }

        return relief is not null;
    }
}
