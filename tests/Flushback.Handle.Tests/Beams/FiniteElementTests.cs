using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Handle.Beams;
using Flushback.Mechanism.Knives;

namespace Flushback.Handle.Tests.Beams;

public class FiniteElementTests
{
    public static TheoryData<int> Seeds => [.. Enumerable.Range(1, 10)];

    [Theory]
    [MemberData(nameof(Seeds))]
    public void A_spring_of_varying_depth_is_as_stiff_as_finite_elements_say(int seed)
    {
        Random random = new(seed);
        double Between(double low, double high) => low + ((high - low) * random.NextDouble());
        SpringDesign design = new()
        {
            UndersideMm = 4,
            DepthMm = Between(2.8, 3.6),
            PadEndMm = Between(7, 11),
            BellyMm = Between(0.2, 1),
            CentrePin = new Point(-Between(24, 34), 5.2 + Between(-0.2, 0.2)),
            RearPin = new Point(-Between(50, 75), 5.3),
        };
        Knife knife = new KnifeDesign("Random") { Spring = design, PinRadiusMm = Between(0.8, 1.1) }.ToKnife();
        double end = -Between(4, 7);

        SpringBeam beam = new(knife.Spring, knife.CentrePin, knife.RearPin!.Value, end);
        (double rise, double tilt, double turn) = FiniteElementBeam.Solve(
            knife.Spring,
            knife.CentrePin,
            knife.RearPin!.Value,
            end
        );

        Close.To(rise, beam.Whole.RisePerForce, 1e-3);
        Close.To(tilt, beam.Whole.TiltPerForce, 1e-3);
        Close.To(turn, beam.Whole.TiltPerMoment, 1e-3);
    }
}
