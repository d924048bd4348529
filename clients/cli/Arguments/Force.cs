using System.Diagnostics.CodeAnalysis;

namespace Flushback.Cli.Arguments;

/// <summary>Forces on the command line: newtons, with or without their unit, or pounds-force, such as <c>22</c>, <c>22N</c> or <c>5lbf</c>.</summary>
internal static class Force
{
    private static readonly (string Suffix, double Newtons)[] _units = [("lbf", 4.4482216152605), ("N", 1)];

    /// <summary>What is wrong with a text that is no force.</summary>
    public static string Complaint(string text) =>
        $"'{text}' is not a force: write newtons or pounds-force, such as 22, 22N or 5lbf.";

    /// <summary>Reads a force in newtons.</summary>
    public static bool TryParse(string text, [NotNullWhen(true)] out double? newtons)
    {
        (string number, double unit) = SplitUnit(text.Trim());
        bool isForce = Number.TryParse(number, out double value) && double.IsFinite(value * unit);
        newtons = isForce ? value * unit : null;
        return isForce;
    }

    private static (string Number, double Newtons) SplitUnit(string text)
    {
        foreach ((string suffix, double newtons) in _units)
        {
            if (text.EndsWith(suffix, StringComparison.OrdinalIgnoreCase))
            {
                return (text[..^suffix.Length], newtons);
            }
        }

        return (text, 1);
    }
}
