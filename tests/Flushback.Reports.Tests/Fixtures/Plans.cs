using Flushback.Catalogue.Designs;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Measured;
using Flushback.Mechanism.Plans;

namespace Flushback.Reports.Tests.Fixtures;

/// <summary>Plans for the tests, of knives of the catalogue.</summary>
internal static class Plans
{
    /// <summary>The one with most to say: two slices of the closed face, a relief in each, every corner rounded.</summary>
    public const string Most = "plan-most";

    private static readonly KnifeDesign _high = KnifeCatalogue.Wagtail with
    {
        Tang = new TangDesign { HalfStopReadingMm = 0.25, ClosedReadingMm = 0.55 },
    };

    private static readonly Dictionary<
        string,
        (KnifeDesign Design, PlanSettings Settings, MeasuredReadings? Measured)
    > _all = new()
    {
        ["plan-reached"] = (_high, new PlanSettings(), null),
        [Most] = (
            _high with
            {
                Tang = _high.Tang with { ClosedTiltDeg = 0.9, ClosedReadingMm = 0.46, HalfStopReadingMm = 0.2 },
            },
            new PlanSettings { ReliefDepthMm = 0.06, RestAngleTolerance = Geometry.Angle.FromDegrees(0.5) },
            null
        ),
        ["plan-measured"] = (
            _high,
            new PlanSettings(),
            new MeasuredReadings
            {
                HalfStopMm = 0.2,
                ClosedMm = 0.6,
                OpenHeightMm = 0.02,
            }
        ),
        ["plan-falls-short"] = (
            KnifeCatalogue.Wagtail with
            {
                Tang = new TangDesign { HalfStopReadingMm = -0.5, ClosedReadingMm = -0.6 },
            },
            new PlanSettings(),
            null
        ),
        ["plan-nothing-to-do"] = (KnifeCatalogue.Wagtail, new PlanSettings { LeastCornerRadiusMm = 0 }, null),
        ["plan-no-half-stop"] = (
            KnifeCatalogue.Dunlin with
            {
                Tang = KnifeCatalogue.Dunlin.Tang with { ClosedReadingMm = 0.5 },
            },
            new PlanSettings { StockKeptMm = 0.02 },
            null
        ),
    };

    public static IEnumerable<string> All => _all.Keys;

    public static TheoryData<string> Names => [.. All];

    public static PlanReport Of(string name)
    {
        (KnifeDesign design, PlanSettings settings, MeasuredReadings? measured) = _all[name];
        (Placement? placement, _) = KnifePlacement.Place(design.ToDrawn());
        PlanSettings judged = settings with { Simulation = new() };
        if (measured is null)
        {
            return Planning.Run(placement!, judged);
        }

        (PlanReport? plan, MeasuredProblem? problem) = Planning.FromMeasured(placement!, measured, judged);
        Assert.True(plan is not null, problem?.Sentence);
        return plan!;
    }

    public static string Text(string name) => PlanTextReport.Write("Wagtail <no. 3>", Of(name));

    public static string Page(string name) => PlanHtmlReport.Write("Wagtail <no. 3>", Of(name));

    public static string Card(string name) => PlanCardHtml.Write("Wagtail <no. 3>", Of(name));

    public static byte[] Pdf(string name) => PlanCardPdf.Write("Wagtail <no. 3>", Of(name));
}
