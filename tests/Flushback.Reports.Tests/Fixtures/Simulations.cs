using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Knives;
using Flushback.Mechanism.Passes;

namespace Flushback.Reports.Tests.Fixtures;

/// <summary>Simulations for the tests, of knives of the catalogue.</summary>
internal static class Simulations
{
    private static readonly Dictionary<string, (KnifeDesign Design, Pass[] Passes)> _all = new()
    {
        ["passes-many"] = (
            KnifeCatalogue.Wagtail,
            [
                new RoundCorner(Site.On(BladeFace.OpenCorner), 0.5),
                new FlatSlice(Site.On(BladeFace.HalfStopFace)) { FrontDepthMm = 0.05, RearDepthMm = 0.03 },
                new WheelSlice(Site.On(BladeFace.ClosedFace), 80) { FrontDepthMm = 0.02, RearDepthMm = 0.1 },
                new ReliefArc(Site.On(BladeFace.OpenFlat), 0.05, 1, 0.8),
                new DressKick(0.03),
                new LowerNose { FrontDepthMm = 0.01, RearDepthMm = 0.01 },
                new DressEndFace(Angle.FromDegrees(78), 0.01),
                new ShortenTip(1, IsAllowed: true),
            ]
        ),
        ["passes-no-half-stop"] = (
            KnifeCatalogue.Dunlin,
            [new RoundCorner(Site.On(BladeFace.Shoulder), 0.3), new RoundCorner(Site.On(BladeFace.Kick), 0.6)]
        ),
    };

    public static TheoryData<string> Names => [.. _all.Keys];

    public static Simulation Of(string name)
    {
        (KnifeDesign design, Pass[] passes) = _all[name];
        (Placement? placement, _) = KnifePlacement.Place(design.ToDrawn());
        (Simulation? simulation, RefusedPass? refused) = Simulation.Run(placement!, passes, new SimulationSettings());
        Assert.True(simulation is not null, refused?.Problem.Sentence);
        return simulation!;
    }

    public static string Text(string name) => SimulationTextReport.Write("Wagtail <no. 3>", Of(name));

    public static string Page(string name) => SimulationHtmlReport.Write("Wagtail <no. 3>", Of(name));
}
