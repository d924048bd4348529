using System.Diagnostics.CodeAnalysis;
using Flushback.Contract.V1;

namespace Flushback.Cli.Arguments;

/// <summary>Wanted readings on the command line, such as <c>half-stop=+0.005in,closed=0.015in</c>.</summary>
internal static class Targets
{
    /// <summary>What is wrong with a text that holds no targets.</summary>
    public static string Complaint(string text) =>
        $"'{text}' names no target: write half-stop=LENGTH, closed=LENGTH or both with a comma between, such as half-stop=+0.005in,closed=0.015in; open is where the dial is zeroed.";

    /// <summary>Reads targets.</summary>
    /// <param name="text">Stops and lengths.</param>
    /// <param name="settings">Settings with nothing but the targets.</param>
    /// <returns>False when the text holds none, or the same stop twice.</returns>
    public static bool TryParse(string text, [NotNullWhen(true)] out BenchSettings? settings)
    {
        BenchSettings read = new();
        bool isRead = Array.TrueForAll(text.Split(','), target => TryAdd(target.Split('='), read));
        settings = isRead ? read : null;
        return isRead;
    }

    /// <summary>Sets half the width of the window of all three stops.</summary>
    public static void ApplyTolerance(double mm, BenchSettings settings)
    {
        settings.Open = WithTolerance(settings.Open, mm);
        settings.HalfStop = WithTolerance(settings.HalfStop, mm);
        settings.Closed = WithTolerance(settings.Closed, mm);
    }

    private static bool TryAdd(string[] target, BenchSettings settings)
    {
        if (target.Length != 2 || !Length.TryParse(target[1], out double mm))
        {
            return false;
        }

        switch (target[0].Trim().ToLowerInvariant())
        {
            case "half-stop" when settings.HalfStop is null:
                settings.HalfStop = new StopTarget { LiftMm = mm };
                return true;
            case "closed" when settings.Closed is null:
                settings.Closed = new StopTarget { LiftMm = mm };
                return true;
            default:
                return false;
        }
    }

    private static StopTarget WithTolerance(StopTarget? target, double mm)
    {
        StopTarget changed = target?.Clone() ?? new StopTarget();
        changed.ToleranceMm = mm;
        return changed;
    }
}
