using Flushback.Inspection.Contours;

namespace Flushback.Inspection.Corners;

/// <summary>The least radius that a cutter has to reach into.</summary>
internal static class InnerCorners
{
    /// <summary>
    /// The tightest hollow of a part; null when it has none. Round holes are left out: they are drilled or reamed, and their
    /// radius is their own.
    /// </summary>
    public static InnerRadius? LeastOf(MetalPart part)
    {
        InnerRadius? tightest = null;
        foreach (BorderLoop loop in part.Loops.Where(loop => loop.Contour.Circle is null))
        {
            foreach (HollowRun run in Hollows.Of(loop.Path, 0))
            {
                if (run.RadiusMm is { } radius && !(radius >= tightest?.RadiusMm))
                {
                    tightest = new InnerRadius(radius, run.Tightest.At, Hollows.HandlesOf(run.Tightest, loop));
                }
            }
        }

        return tightest;
    }
}
