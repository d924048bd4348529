using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Reports.Wording;

/// <summary>Passes in a maker's words.</summary>
public static class PassWords
{
    /// <summary>What is done and where, in a few words: <c>round the open corner</c>.</summary>
    public static string Title(Pass pass) =>
        pass switch
        {
            FlatSlice slice => $"slice the {slice.Face}",
            WheelSlice wheel => $"slice the {wheel.Face} with a wheel",
            LowerNose => "lower the nose's underside",
            RoundCorner { Corner.Blade: BladeFace.Shoulder } => "round the shoulder's top",
            RoundCorner { Corner.Spring: SpringFace.Underside } => "round the pad's rear corner",
            RoundCorner round => $"round the {round.Corner}",
            ReliefArc relief => $"relieve the {relief.Face}",
            DressKick => "dress the kick",
            DressEndFace => "dress the end face",
            ShortenTip => "shorten the tip",
            _ => "take metal off",
        };

    /// <summary>By how much, in both units: <c>radius 1.000 mm (39.4 thou)</c>.</summary>
    public static string Amount(Pass pass, Measure measure) =>
        pass switch
        {
            WheelSlice wheel => $"{Depths(wheel, measure)}, wheel of {measure.LongLength(wheel.WheelRadiusMm)} radius",
            SlicePass slice => Depths(slice, measure),
            RoundCorner round => $"radius {measure.Length(round.RadiusMm)}",
            ReliefArc relief =>
                $"depth {measure.Length(relief.DepthMm)}, margins front {measure.Length(relief.FrontMarginMm)}, rear {measure.Length(relief.RearMarginMm)}",
            DressKick kick => $"depth {measure.Length(kick.DepthMm)}",
            DressEndFace { DepthMm: 0 } end => $"to {measure.Degrees(end.AngleInMetal)} against the underside",
            DressEndFace end =>
                $"to {measure.Degrees(end.AngleInMetal)} against the underside, depth {measure.Length(end.DepthMm)}",
            ShortenTip tip => $"by {measure.Length(tip.LengthMm)}",
            _ => "",
        };

    private static string Depths(SlicePass slice, Measure measure) =>
        $"front {Depth(slice.FrontDepthMm, measure)}, rear {Depth(slice.RearDepthMm, measure)}";

    private static string Depth(double mm, Measure measure) => mm == 0 ? "nothing" : measure.Length(mm);
}
