using CsCheck;
using Flushback.Geometry;

namespace Flushback.Catalogue.Designs;

/// <summary>Invents knives at random: half stops and round tangs, hollows, rounded corners, undercut and square shoulders.</summary>
/// <remarks>
/// The seed says it all: the same seed gives the same knife, and it is the knife's name, so that a failing case can be
/// made again. Ranges are wider than what makers draw.
/// </remarks>
public static class KnifeGenerator
{
    /// <summary>Any knife, for property tests.</summary>
    public static Gen<KnifeDesign> Designs { get; } = Gen.Int[0, int.MaxValue].Select(FromSeed);

    /// <summary>The first so many knives.</summary>
    public static IEnumerable<KnifeDesign> First(int count) => Enumerable.Range(1, count).Select(FromSeed);

    /// <summary>The knife of a seed.</summary>
    public static KnifeDesign FromSeed(int seed)
    {
        // Reproducible on purpose, and no secret.
#pragma warning disable CA5394
        Chance chance = new(new Random(seed));
#pragma warning restore CA5394
        SpringDesign spring = Spring(chance);
        return new KnifeDesign(FormattableString.Invariant($"seed {seed}"))
        {
            PinRadiusMm = 0.25,
            Spring = spring,
            Tang = Tang(chance, spring),
            Blade = Blade(chance, spring),
        };
    }

    private static SpringDesign Spring(Chance chance)
    {
        double underside = chance.Between(3.2, 5);
        double lever = chance.Between(22, 36);
        Point centrePin = new(-lever, underside + chance.Between(0.9, 1.9));
        return new SpringDesign
        {
            UndersideMm = underside,
            ReachMm = chance.Between(0.7, 1.2) * underside,
            DepthMm = chance.Between(2.4, 3.4),
            EndFaceDeg = chance.OneIn(4) ? 90 : chance.Between(72, 90),
            NoseRadiusMm = chance.Perhaps(0.05, 0.5),
            PadEndMm = (1.9 * underside) + chance.Between(1, 3),
            PadRelief = chance.OneIn(5) ? new Relief(chance.Between(0.01, 0.06), chance.Between(0.05, 2)) : Relief.None,
            BellyMm = chance.Between(0.3, 1.2),
            FrontStockMm = chance.Perhaps(0.05, 0.5),
            CentrePin = centrePin,
            RearPin = new Point(-lever * chance.Between(1.9, 2.3), centrePin.Y + chance.Between(0, 0.4)),
        };
    }

    private static TangDesign Tang(Chance chance, SpringDesign spring) =>
        new()
        {
            HasHalfStop = !chance.OneIn(3),
            OpenDropMm = chance.Perhaps(0.01, 0.2),
            OpenTiltDeg = chance.OneIn(6) ? 0 : chance.Between(-1.5, 3),
            OpenRelief = Hollow(chance),
            OpenCornerRadiusMm = chance.Perhaps(0.05, 0.6),
            HalfStopReadingMm = chance.Between(-0.3, 0.5),
            HalfStopTiltDeg = chance.OneIn(2) ? 0 : chance.Between(-2, 2),
            HalfStopRelief = Hollow(chance),
            ClosedCornerRadiusMm = chance.Perhaps(0.05, 0.6),
            ClosedReadingMm = chance.Between(-0.2, 0.6),
            ClosedTiltDeg = chance.OneIn(2) ? 0 : chance.Between(-1.5, 1.5),
            ClosedRelief = Hollow(chance),
            KickMm = chance.Between(1.3, 1.8) * spring.UndersideMm,
            KickRadiusMm = chance.Perhaps(0.1, 0.8),
            RunStartMm = RunStart(spring.UndersideMm, chance.Between(1.05, 1.5)),
        };

    /// <summary>Where a run that lifts the spring by so much leaves the open flat; it must clear the closed face too.</summary>
    private static double RunStart(double undersideMm, double liftMm) =>
        Math.Sqrt(((undersideMm + liftMm) * (undersideMm + liftMm)) - (undersideMm * undersideMm));

    private static BladeDesign Blade(Chance chance, SpringDesign spring)
    {
        bool square = chance.OneIn(4);
        return new BladeDesign
        {
            UndercutDeg = square ? 90 : chance.Between(64, 80),
            ShoulderMm = chance.Between(0.75, 1.05) * spring.DepthMm,
            ShoulderRadiusMm = chance.Perhaps(0.05, 0.4),
            ShoulderGapMm = chance.Perhaps(0.002, 0.1),
            CornerReliefMm = chance.Perhaps(0.2, 0.6),
            LengthMm = chance.Between(1.85, 2) * -spring.CentrePin.X,
            EdgeMm = chance.Between(0.35, 0.5) * spring.UndersideMm,
        };
    }

    private static Relief Hollow(Chance chance) =>
        chance.OneIn(3) ? Relief.None : new Relief(chance.Between(0.01, 0.15), chance.Perhaps(0.2, 1));

    /// <summary>Draws numbers, so that the order of drawing alone decides.</summary>
    private sealed class Chance(Random random)
    {
#pragma warning disable CA5394
        public double Between(double low, double high) => low + ((high - low) * random.NextDouble());

        public bool OneIn(int count) => random.Next(count) == 0;
#pragma warning restore CA5394

        /// <summary>Nothing as often as something.</summary>
        public double Perhaps(double low, double high) => OneIn(2) ? 0 : Between(low, high);
    }
}
