using System.Diagnostics.CodeAnalysis;
using Flushback.Contract.V1;

namespace Flushback.Cli.Arguments;

/// <summary>Readings of the dial on the command line, such as <c>half-stop=9thou,closed=0.55mm</c>.</summary>
internal static class Measured
{
    /// <summary>What is wrong with a text that holds no readings.</summary>
    public static string Complaint(string text) =>
        $"'{text}' holds no readings: write half-stop=LENGTH, closed=LENGTH or both with a comma between, and open=LENGTH for how far the back stands open above the drawing, such as half-stop=9thou,closed=0.55mm.";

    /// <summary>Reads what the dial showed.</summary>
    /// <param name="text">Stops and lengths.</param>
    /// <param name="measured">The readings.</param>
    /// <returns>False when the text holds none, or the same stop twice.</returns>
    public static bool TryParse(string text, [NotNullWhen(true)] out MeasuredReadings? measured)
    {
        MeasuredReadings read = new();
        bool isRead = Array.TrueForAll(text.Split(','), reading => TryAdd(reading.Split('='), read));
        measured = isRead && (read.HasHalfStopMm || read.HasClosedMm) ? read : null;
        return measured is not null;
    }

    private static bool TryAdd(string[] reading, MeasuredReadings read)
    {
        if (reading.Length != 2 || !Length.TryParse(reading[1], out double mm))
        {
            return false;
        }

        switch (reading[0].Trim().ToLowerInvariant())
        {
            case "half-stop" when !read.HasHalfStopMm:
                read.HalfStopMm = mm;
                return true;
            case "closed" when !read.HasClosedMm:
                read.ClosedMm = mm;
                return true;
            case "open" when !read.HasOpenHeightMm:
                read.OpenHeightMm = mm;
                return true;
            default:
                return false;
        }
    }
}
