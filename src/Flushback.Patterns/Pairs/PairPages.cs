using Flushback.Patterns.Layout;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Pairs;

/// <summary>The pages of the two blades, each as a knife of its own in the same handle on the same pins.</summary>
/// <remarks>
/// Both pivots lie as high under the back as each tang and nose ask for: the second nose is as deep as brings the springs'
/// backs to one line. At the other end the handle is seen mirrored, so that its taper turns round.
/// </remarks>
internal sealed class PairPages
{
    // Room between a closed tip and the other blade's tang, where a length is left out, in tang heights.
    private const double TangReach = 1.75;

    public PairPages(PairParameters page)
    {
        PatternParameters given = page.First;
        SecondBladeParameters second = page.Second;
        bool atOtherEnd = page.Arrangement == Arrangement.SharedSpring || second.AtOtherEnd;
        AtOtherEnd = atOtherEnd;
        PatternParameters laid = new PatternLayout(given).Dimensions;
        double front = laid.Handle.FrontMm!.Value;
        double secondFront = atOtherEnd
            ? second.FrontMm ?? (second.Tang.HeightMm + (front - given.Tang.HeightMm))
            : front;
        SpanMm = given.Handle.ClosedLengthMm - front - secondFront;
        bool isShared = page.Arrangement == Arrangement.SharedSpring;
        double centre = given.Pins.CentreBehindMm ?? (isShared ? SpanMm / 2 : laid.Pins.CentreBehindMm!.Value);
        First = given with
        {
            // A shared spring has no rear pin: the thinnest stands for it, so that it is in nobody's way.
            Pins = given.Pins with
            {
                CentreBehindMm = centre,
                RearDiameterMm = isShared ? PatternLimits.Of("pins.rear_diameter_mm").Least : given.Pins.RearDiameterMm,
            },
            Blade = isShared ? WithLength(given, front, second.Tang.HeightMm) : given.Blade,
        };
        PatternParameters filled = new PatternLayout(First).Dimensions;
        double back = given.Tang.HeightMm + given.Spring.NoseDepthMm - given.Readings.OpenMm;
        Second = First with
        {
            Handle = filled.Handle with
            {
                OverallLengthMm = null,
                FrontMm = secondFront,
                TaperMm = atOtherEnd ? -given.Handle.TaperMm : given.Handle.TaperMm,
            },
            Pins = First.Pins with
            {
                CentreBehindMm = isShared ? SpanMm - centre : First.Pins.CentreBehindMm,
                CentreDepthMm = filled.Pins.CentreDepthMm,
            },
            Tang = second.Tang,
            Blade = second.Blade,
            Readings = second.Readings,
            Spring = First.Spring with
            {
                NoseDepthMm = back + second.Readings.OpenMm - second.Tang.HeightMm,
                CentreDepthMm = isShared ? filled.Spring.CentreDepthMm : First.Spring.CentreDepthMm,
                PadEndMm = atOtherEnd ? First.Spring.PadEndMm : filled.Spring.PadEndMm,
            },
        };
        if (isShared)
        {
            Second = Second with { Blade = WithLength(Second, secondFront, given.Tang.HeightMm) };
        }
    }

    /// <summary>The first blade's page.</summary>
    public PatternParameters First { get; }

    /// <summary>The second blade's page, in its own frame.</summary>
    public PatternParameters Second { get; }

    /// <summary>Between the pivots along the handle, where they lie at opposite ends.</summary>
    public double SpanMm { get; }

    /// <summary>True where the second blade opens at the other end.</summary>
    public bool AtOtherEnd { get; }

    /// <summary>A blade so short that its closed tip stays clear of the other blade's tang, unless its length is given.</summary>
    private BladeParameters WithLength(PatternParameters page, double frontMm, double otherTangMm) =>
        page.Blade with
        {
            LengthMm =
                page.Blade.LengthMm
                ?? (page.Handle.OverallLengthMm is null ? SpanMm - frontMm - (TangReach * otherTangMm) : null),
        };
}
