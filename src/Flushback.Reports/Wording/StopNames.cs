using Flushback.Mechanism.Bench;

namespace Flushback.Reports.Wording;

/// <summary>The trade's words for the stops.</summary>
public static class StopNames
{
    /// <summary>A stop in lower case: <c>half stop</c>.</summary>
    public static string Of(Stop stop) =>
        stop switch
        {
            Stop.Open => "open",
            Stop.HalfStop => "half stop",
            _ => "closed",
        };

    /// <summary>Where something is at a stop: <c>at the half stop</c>.</summary>
    public static string At(Stop stop) =>
        stop switch
        {
            Stop.Open => "with the blade open",
            Stop.HalfStop => "at the half stop",
            _ => "with the blade closed",
        };
}
