using Flushback.Mechanism.Findings;

namespace Flushback.Mechanism.Passes.Cuts;

/// <summary>Refuses amounts that take nothing off or would add metal, before anything is cut.</summary>
internal static class Amounts
{
    /// <summary>What is wrong with a pass's numbers; null when nothing is.</summary>
    public static PassProblem? Refuse(Pass pass) =>
        pass switch
        {
            WheelSlice { WheelRadiusMm: var radius } when !IsAboveZero(radius) => NotAboveZero(
                "radius of the wheel",
                radius
            ),
            SlicePass slice => Depths(slice),
            RoundCorner round => AboveZero("radius of the round", round.RadiusMm),
            ReliefArc relief => AboveZero("depth of the relief", relief.DepthMm)
                ?? NotNegative("front margin of the relief", relief.FrontMarginMm)
                ?? NotNegative("rear margin of the relief", relief.RearMarginMm),
            DressKick kick => AboveZero("depth at the kick", kick.DepthMm),
            DressEndFace end => NotNegative("depth at the end face", end.DepthMm) ?? Square(end),
            ShortenTip { IsAllowed: false } => new PassProblem(
                PassReasons.TipNotAllowed,
                "The tip is cut last, in the handle, and only when that is asked for outright; allow it, or leave the tip as it is."
            ),
            ShortenTip tip => AboveZero("length off the tip", tip.LengthMm),
            _ => null,
        };

    private static PassProblem? Depths(SlicePass slice)
    {
        if (NotNegative("front depth", slice.FrontDepthMm) is { } front)
        {
            return front;
        }

        if (NotNegative("rear depth", slice.RearDepthMm) is { } rear)
        {
            return rear;
        }

        return slice.FrontDepthMm > 0 || slice.RearDepthMm > 0
            ? null
            : new PassProblem(
                PassReasons.NothingTaken,
                $"A slice of the {slice.Site.Name} with no depth at either contact takes nothing off; give it a depth at one of them."
            );
    }

    private static PassProblem? Square(DressEndFace end) =>
        end.AngleInMetal.Degrees is > 30 and < 150
            ? null
            : new PassProblem(
                PassReasons.ToolDoesNotFit,
                FormattableString.Invariant(
                    $"An end face at {end.AngleInMetal.Degrees:0.##} degrees to the underside is no end face; give an angle between 30 and 150 degrees."
                )
            );

    private static bool IsAboveZero(double value) => double.IsFinite(value) && value > 0;

    private static PassProblem? AboveZero(string what, double mm) => IsAboveZero(mm) ? null : NotAboveZero(what, mm);

    private static PassProblem NotAboveZero(string what, double mm) =>
        mm < 0
            ? Negative(what, mm)
            : new PassProblem(
                PassReasons.NothingTaken,
                $"The {what} has to be above zero; give one, or leave the pass out."
            );

    private static PassProblem? NotNegative(string what, double mm) =>
        double.IsFinite(mm) && mm >= 0 ? null : Negative(what, mm);

    private static PassProblem Negative(string what, double mm) =>
        new(
            PassReasons.AddsMetal,
            $"The {what} is {Said.Length(mm)}: that would add metal, and a pass only takes it off; give it without the minus or leave the pass out."
        );
}
