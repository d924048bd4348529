using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Handle;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Tolerances;

namespace Flushback.Reports.Tests.Fixtures;

/// <summary>Tolerance studies for the tests, of knives of the catalogue.</summary>
internal static class Studies
{
    private static readonly Dictionary<string, (KnifeDesign Design, ToleranceSettings Settings)> _all = new()
    {
        ["tolerance-bench"] = (
            KnifeCatalogue.Wagtail,
            new()
            {
                PinsMm = 0.02,
                ClearanceMm = 0.01,
                ProfileMm = 0.03,
                Parts = 1_200,
            }
        ),
        ["tolerance-handle"] = (
            KnifeCatalogue.Dunlin,
            new()
            {
                PinsMm = 0.02,
                WidthMm = 0.03,
                PreloadMm = 0.05,
                Distribution = Distribution.Normal,
                Parts = 400,
                Seed = 7,
                Handle = new HandleSettings { WidthMm = 3.2 },
            }
        ),
        ["tolerance-lost"] = (KnifeCatalogue.Curlew, new() { ProfileMm = 3, Parts = 300 }),
    };

    public static TheoryData<string> Names => [.. _all.Keys];

    public static ToleranceReport Of(string name)
    {
        (KnifeDesign design, ToleranceSettings settings) = _all[name];
        (ToleranceReport? report, _) = ToleranceStudy.Run(
            new Placement(design.ToKnife(), RigidMotion.Identity, Angle.Zero, false),
            settings
        );
        return report!;
    }

    public static string Text(string name) => ToleranceTextReport.Write("Wagtail <no. 3>", Of(name));

    public static string Page(string name) => ToleranceHtmlReport.Write("Wagtail <no. 3>", Of(name));
}
