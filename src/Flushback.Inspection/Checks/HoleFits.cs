using Flushback.Inspection.Contours;
using Flushback.Inspection.Pins;
using Flushback.Inspection.Wording;

namespace Flushback.Inspection.Checks;

/// <summary>Holes that do not fit their pins.</summary>
internal static class HoleFits
{
    public static IEnumerable<InspectionFinding> Of(
        IEnumerable<(CutContour Hole, PinFit? Fit)> holes,
        PinHoles pins,
        bool areReamed
    )
    {
        foreach ((CutContour hole, PinFit? found) in holes)
        {
            if (found is not { } fit)
            {
                continue;
            }

            if (pins.TwinOf(fit) is { } twin)
            {
                yield return Unclear(hole, fit, twin);
            }
            else if (!fit.Fits)
            {
                yield return Misfit(hole, fit, areReamed);
            }
        }
    }

    private static InspectionFinding Unclear(CutContour hole, PinFit fit, PinFit twin)
    {
        string which = (fit.Fits, twin.Fits) switch
        {
            (true, _) => $"fits a pin of {fit.PinName}, while the other holes are for pins such as {twin.PinName}",
            (_, true) => $"fits a pin of {twin.PinName} and none of {fit.PinName}",
            _ => $"lies between a pin of {fit.PinName} and one of {twin.PinName} and fits neither",
        };
        return Finding(
            InspectionCodes.PinUnclear,
            hole,
            $"The hole of {Said.Length(fit.HoleMm)} at {Said.At(hole.Circle!.Value.Centre)}, {hole.Label}, {which}.",
            "Say which pins are used, and draw every hole for those: inch and metric pins do not go into each other's holes.",
            fit.HoleMm,
            fit.HoleMm > fit.HighestMm ? fit.HighestMm : fit.LowestMm
        );
    }

    private static InspectionFinding Misfit(CutContour hole, PinFit fit, bool areReamed)
    {
        bool isLarge = fit.HoleMm > fit.HighestMm;
        string range = $"{Said.Length(fit.LowestMm)} to {Said.Length(fit.HighestMm)}";
        string what = areReamed ? $"{range} before it is reamed" : $"{range} (H7)";
        string advice = (isLarge, areReamed) switch
        {
            (true, false) => "Draw it smaller: the pin would be loose, and a hole can be made larger but not smaller.",
            (true, true) => "Draw it smaller: the reamer would have too little to cut, or nothing.",
            (false, true) => "Draw it larger: the reamer would have too much to cut.",
            (false, false) => "Draw it larger, or say that the holes are reamed after cutting.",
        };
        return Finding(
            InspectionCodes.HoleFit,
            hole,
            $"The hole of {Said.Length(fit.HoleMm)} at {Said.At(hole.Circle!.Value.Centre)}, {hole.Label}, is too {(isLarge ? "large" : "small")} "
                + $"for a pin of {fit.PinName}, which wants {what}.",
            advice,
            fit.HoleMm,
            isLarge ? fit.HighestMm : fit.LowestMm
        );
    }

    private static InspectionFinding Finding(
        string code,
        CutContour hole,
        string message,
        string advice,
        double value,
        double limit
    ) =>
        new(
            code,
            Severity.Warning,
            message,
            advice,
            hole.Handles,
            hole.Layer,
            hole.Circle!.Value.Centre,
            value,
            limit,
            "mm"
        );
}
