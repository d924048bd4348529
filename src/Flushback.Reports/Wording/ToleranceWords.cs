using Flushback.Mechanism.Tolerances;

namespace Flushback.Reports.Wording;

/// <summary>The trade's words for tolerances, their dimensions and what a part is read for.</summary>
internal static class ToleranceWords
{
    /// <summary>A tolerance in lower case, without an article.</summary>
    public static string Of(Tolerance tolerance) =>
        tolerance.Kind switch
        {
            ToleranceKind.PivotHole => "pivot's hole in the blade",
            ToleranceKind.CentrePinHole => "centre pin's hole in the spring",
            ToleranceKind.CentrePinPlace => "centre pin from the pivot",
            ToleranceKind.RearPinPlace => "rear pin against its hole",
            ToleranceKind.PivotPlay => "play on the pivot",
            ToleranceKind.CentrePinPlay => "play on the centre pin",
            ToleranceKind.SpringDepth => "depth of the spring",
            ToleranceKind.SpringWidth => "width of the spring",
            ToleranceKind.Preload => "preload",
            _ => $"profile of the {tolerance.Face!.Value.Name}",
        };

    /// <summary>A dimension with the way in which it is off: <c>half-stop face, offset</c>.</summary>
    public static string Of(Tolerance tolerance, Deviation deviation) =>
        deviation == Deviation.Amount ? Of(tolerance) : $"{tolerance.Face?.Name ?? Of(tolerance)}, {Of(deviation)}";

    /// <summary>Whether limits lie to both sides.</summary>
    public static string Sides(Tolerance tolerance, Measure measure) =>
        tolerance.IsOneSided ? "0 to " : measure.EitherSide;

    /// <summary>An outcome in lower case: <c>half stop</c>.</summary>
    public static string Of(Outcome outcome) =>
        outcome switch
        {
            Outcome.OpenHeight => "open, height",
            Outcome.HalfStopLift => "half stop",
            Outcome.ClosedLift => "closed",
            Outcome.OpenAngle => "open, rests at",
            Outcome.HalfStopAngle => "half stop, rests at",
            Outcome.ClosedAngle => "closed, rests at",
            Outcome.TipDepth => "depth of the tip",
            Outcome.Pull => "pull at the nail nick",
            _ => "peak stress",
        };

    /// <summary>How dimensions are spread.</summary>
    public static string Of(Distribution distribution) =>
        distribution == Distribution.Normal
            ? "Normal about the middle, the limits at three standard deviations, so that 0.27 percent lie beyond them."
            : "Anywhere between the limits, each place as likely (JCGM 100:2008, 4.3.7).";

    private static string Of(Deviation deviation) =>
        deviation switch
        {
            Deviation.Forward => "forward",
            Deviation.Up => "up",
            Deviation.Offset => "offset",
            _ => "tilt",
        };
}
