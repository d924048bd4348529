using CsCheck;
using Flushback.Catalogue.Designs;
using Flushback.Geometry;
using Flushback.Mechanism.Passes;

namespace Flushback.Passes.Tests;

/// <summary>Passes at random, in the amounts of a workshop and somewhat beyond.</summary>
internal static class RandomPasses
{
    private static readonly Gen<double> _depth = Gen.OneOf(Gen.Const(0.0), Gen.Double[1e-4, 0.2]);

    private static readonly Gen<Site> _face = Gen.OneOf(
        PassCase.OpenFlat,
        PassCase.Shoulder,
        PassCase.HalfStopFace,
        PassCase.ClosedFace,
        PassCase.Underside,
        PassCase.EndFace
    );

    private static readonly Gen<Site> _corner = Gen.OneOf(
        PassCase.OpenCorner,
        PassCase.ClosedCorner,
        PassCase.Kick,
        PassCase.Shoulder,
        PassCase.NoseCorner,
        PassCase.Underside
    );

    private static readonly Gen<Site> _relieved = Gen.OneOf(
        PassCase.OpenFlat,
        PassCase.HalfStopFace,
        PassCase.ClosedFace,
        PassCase.Underside
    );

    /// <summary>A corner rounded.</summary>
    public static Gen<RoundCorner> Rounds { get; } =
        Gen.Select(_corner, Gen.Double[0.02, 0.8], (corner, radius) => new RoundCorner(corner, radius));

    /// <summary>Any pass.</summary>
    public static Gen<Pass> Any { get; } =
        Gen.OneOf<Pass>(
            Gen.Select(_face, _depth, _depth, (face, front, rear) => (Pass)PassCase.Slice(face, front, rear)),
            Gen.Select(
                _face,
                _depth,
                _depth,
                Gen.Double[2, 100],
                (face, front, rear, radius) =>
                    (Pass)new WheelSlice(face, radius) { FrontDepthMm = front, RearDepthMm = rear }
            ),
            Rounds.Select(round => (Pass)round),
            Gen.Select(
                _relieved,
                Gen.Double[0.005, 0.2],
                Gen.Double[0, 1.5],
                Gen.Double[0, 1.5],
                (face, depth, front, rear) => (Pass)new ReliefArc(face, depth, front, rear)
            ),
            Gen.Double[0.001, 0.2].Select(depth => (Pass)new DressKick(depth)),
            Gen.Select(
                _depth,
                _depth,
                (front, rear) => (Pass)new LowerNose { FrontDepthMm = front, RearDepthMm = rear }
            ),
            Gen.Select(
                Gen.Double[65, 95],
                _depth,
                (angle, depth) => (Pass)new DressEndFace(Angle.FromDegrees(angle), depth)
            ),
            Gen.Double[0.1, 4].Select(length => (Pass)new ShortenTip(length, IsAllowed: true))
        );

    /// <summary>A random knife and a pass for it.</summary>
    public static Gen<(KnifeDesign Design, Pass Pass)> OnKnives { get; } = Gen.Select(KnifeGenerator.Designs, Any);
}
