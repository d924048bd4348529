using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Passes;

namespace Flushback.Passes.Tests;

/// <summary>Passes that cannot be made, each for its own reason, in one sentence.</summary>
public sealed class RefusalTests
{
    public static TheoryData<Pass, string, string> Refusals =>
        new()
        {
            { PassCase.Slice(PassCase.HalfStopFace, -0.1, 0.2), PassReasons.AddsMetal, "front depth" },
            { PassCase.Slice(PassCase.HalfStopFace, 0, 0), PassReasons.NothingTaken, "no depth at either contact" },
            { PassCase.Slice(Site.On(Mechanism.Knives.BladeFace.Run), 0.1, 0.1), PassReasons.UnknownFace, "no run" },
            { PassCase.Slice(Site.On(Mechanism.Knives.BladeFace.Edge), 0.1, 0.1), PassReasons.UnknownFace, "edge" },
            { PassCase.Slice(PassCase.HalfStopFace, 2.6, 2.6), PassReasons.CutsPin, "leaves 0.7" },
            { PassCase.Slice(PassCase.HalfStopFace, 3.5, 3.5), PassReasons.CutsPin, "cuts into the hole of the pivot" },
            { PassCase.Slice(PassCase.Underside, 3.5, 3.5), PassReasons.TwoPieces, "take the whole part away" },
            {
                new LowerNose { FrontDepthMm = 0.05, RearDepthMm = 0.05 },
                PassReasons.ToolDoesNotFit,
                "hangs lower than the cut"
            },
            { PassCase.Slice(PassCase.EndFace, 45, 45), PassReasons.CutsPin, "centre pin" },
            {
                new WheelSlice(PassCase.HalfStopFace, 3) { FrontDepthMm = 0.1, RearDepthMm = 0.1 },
                PassReasons.ToolDoesNotFit,
                "cannot reach both contacts"
            },
            {
                new WheelSlice(PassCase.OpenFlat, 20) { FrontDepthMm = 0.1, RearDepthMm = 0.1 },
                PassReasons.ToolDoesNotFit,
                "would cut into the shoulder"
            },
            { new RoundCorner(PassCase.Kick, 0.1), PassReasons.AddsMetal, "already has a radius of 0.400 mm" },
            { new RoundCorner(PassCase.OpenFlat, 0.1), PassReasons.NoCorner, "is no corner" },
            { new RoundCorner(PassCase.OpenCorner, 0), PassReasons.NothingTaken, "above zero" },
            { new ReliefArc(PassCase.HalfStopFace, 0.05, 0, 0), PassReasons.NothingTaken, "already lies deeper" },
            { new ReliefArc(PassCase.HalfStopFace, 0.05, 5, 4), PassReasons.ToolDoesNotFit, "leave nothing" },
            { new ReliefArc(PassCase.HalfStopFace, 5, 0, 0), PassReasons.ToolDoesNotFit, "no shallow hollow" },
            { new DressKick(0), PassReasons.NothingTaken, "above zero" },
            { new DressEndFace(Angle.FromDegrees(80)), PassReasons.NothingTaken, "already stands at 80.00" },
            { new DressEndFace(Angle.FromDegrees(20)), PassReasons.ToolDoesNotFit, "no end face" },
            { new ShortenTip(1, IsAllowed: false), PassReasons.TipNotAllowed, "cut last, in the handle" },
            { new ShortenTip(60, IsAllowed: true), PassReasons.ConsumesFace, "has to stay" },
        };

    [Theory]
    [MemberData(nameof(Refusals))]
    public void Each_is_refused_for_its_reason_in_one_sentence(Pass pass, string reason, string said)
    {
        (PassResult? result, PassProblem? problem) = PassCase.Placed(KnifeCatalogue.Wagtail).Try(pass);

        Assert.Null(result);
        Assert.Equal(reason, problem!.Reason);
        Assert.Contains(said, problem.Sentence, StringComparison.Ordinal);
        Assert.EndsWith(".", problem.Sentence, StringComparison.Ordinal);
        Assert.DoesNotContain('\n', problem.Sentence);
    }

    [Fact]
    public void The_simulation_says_which_pass_was_refused_and_on_what_it_was_to_be_made()
    {
        (Simulation? simulation, RefusedPass? refused) = Simulation.Run(
            PassCase.PlacementOf(new PassCase(KnifeCatalogue.Wagtail).Knife),
            [new RoundCorner(PassCase.OpenCorner, 0.5), new RoundCorner(PassCase.OpenCorner, 0.4)],
            new SimulationSettings()
        );

        Assert.Null(simulation);
        Assert.Equal(1, refused!.Index);
        Assert.Equal(PassReasons.AddsMetal, refused.Problem.Reason);
        Assert.Equal(new RoundCorner(PassCase.OpenCorner, 0.5), refused.Before.Pass);
    }
}
