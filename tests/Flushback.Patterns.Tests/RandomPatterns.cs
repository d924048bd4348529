using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Tests;

/// <summary>Pages of dimensions at random, inside the limits and in the proportions of a knife: the same for the same seed.</summary>
/// <remarks>
/// Lengths are drawn as shares of the closed length or the tang height, each over a wide range; half of what may be left out is
/// left out. Angles, radii, reliefs, stock and readings are drawn on their own. A page in conflict is drawn again.
/// </remarks>
public static class RandomPatterns
{
    private static readonly Lazy<(int Seed, DrawnPattern Pattern)[]> _fiveHundred = new(() => [.. First(500)]);

    /// <summary>The first five hundred, drawn once for all tests.</summary>
    public static IReadOnlyList<(int Seed, DrawnPattern Pattern)> FiveHundred => _fiveHundred.Value;

    /// <summary>Patterns of the first so many seeds whose pages are not in conflict.</summary>
    public static IEnumerable<(int Seed, DrawnPattern Pattern)> First(int count)
    {
        for (int seed = 1, found = 0; found < count; seed++)
        {
            if (PatternDrawing.Make(Page(seed)).Pattern is { } pattern)
            {
                found++;
                yield return (seed, pattern);
            }
        }
    }

    /// <summary>The page of a seed.</summary>
    public static PatternParameters Page(int seed)
    {
        // Reproducible on purpose, and no secret.
#pragma warning disable CA5394
        Chance chance = new(new Random(seed));
#pragma warning restore CA5394
        double closed = chance.Between(60, 130);
        double height = Math.Clamp(closed * chance.Between(0.042, 0.056), 2.6, 8.5);
        double nose = height * chance.Between(0.68, 0.92);
        double wall = Math.Max(0.4, 0.16 * height * chance.Between(0.7, 1));
        bool hasHalfStop = !chance.OneIn(3);
        double shoulder = chance.Between(60, 80);
        double frontStock = chance.Perhaps(0.05, 0.6);
        return new PatternParameters
        {
            Handle = Handle(chance, closed),
            Pins = new PinParameters
            {
                PivotDiameterMm = Math.Round(Math.Clamp(height * chance.Between(0.4, 0.65), 1, 6), 1),
                CentreDiameterMm = Math.Round(chance.Between(0.8, Math.Max(0.85, (0.8 * height) - (2 * wall))), 1),
                RearDiameterMm = Math.Round(chance.Between(0.8, Math.Max(0.85, (0.5 * height) - (2 * wall))), 1),
                CentreBehindMm = chance.Given(closed * chance.Between(0.46, 0.54)),
                RearBehindMm = chance.Given(closed * chance.Between(0.8, 0.84)),
                WallMm = wall,
            },
            Tang = new TangParameters
            {
                HasHalfStop = hasHalfStop,
                HeightMm = height,
                LengthMm = chance.OneIn(3) ? height * chance.Between(2.4, 2.5) : null,
                RunRiseMm = chance.Between(0.2, 0.36) * height,
                OpenFlatDepthMm = chance.Given(nose * chance.Between(0.82, 0.97)),
                OpenFlatTiltDeg = chance.Between(0.25, 3),
                ShoulderDeg = shoulder,
                ShoulderRadiusMm = chance.Perhaps(0.05, 0.4),
                NotchRadiusMm = chance.Perhaps(0.15, 0.6),
                OpenCornerRadiusMm = chance.Perhaps(0.05, 0.7),
                ClosedCornerRadiusMm = chance.Perhaps(0.05, 0.7),
                OpenReliefMm = chance.Perhaps(0.01, 0.15),
                HalfStopReliefMm = chance.Between(0.02, 0.2),
                ClosedReliefMm = chance.Between(0.02, 0.2),
                ReliefLandMm = chance.Perhaps(0.1, 0.6),
                KickHeightMm = chance.Given(height * chance.Between(0.3, 0.5)),
                KickPlaceMm = chance.Given(height * chance.Between(1.3, 1.8)),
                KickRadiusMm = height * chance.Between(0.05, 0.22),
            },
            Spring = new SpringParameters
            {
                NoseDepthMm = nose,
                EndFaceDeg = Math.Min(shoulder + chance.Between(2, 12), 90),
                NoseRadiusMm = chance.Perhaps(0.05, 0.4),
                BellyReliefMm = chance.Perhaps(0.05, 0.16 * nose),
                FrontStockMm = frontStock,
                RearStockMm = frontStock * chance.Perhaps(0.1, 1),
                PreloadMm = chance.Given(closed * chance.Between(0, 0.008)),
                WidthMm = chance.Between(2, 5),
            },
            Blade = Blade(chance, closed, height),
            Readings = new ReadingParameters
            {
                OpenMm = chance.Perhaps(-0.1, 0.1),
                HalfStopMm = chance.Between(-0.1, 0.4),
                ClosedMm = chance.Between(-0.1, 0.6),
                HalfStopRestDeg = chance.OneIn(2) ? 90 : chance.Between(88, 92),
                ClosedRestDeg = chance.OneIn(2) ? 180 : chance.Between(178.5, 181),
            },
            Stock = new StockParameters
            {
                BladeMm = chance.Perhaps(0.05, 0.3),
                SpringMm = chance.Perhaps(0.05, 0.3),
                KerfMm = chance.Perhaps(0.1, 1),
            },
        };
    }

    private static HandleParameters Handle(Chance chance, double closed) =>
        new()
        {
            ClosedLengthMm = closed,
            TaperMm = closed * chance.Between(0, 0.03),
            SwellMm = closed * chance.Between(-0.012, 0.002),
            BackDropMm = closed * chance.Perhaps(0.001, 0.006),
            TipDepthMm = chance.Between(0.5, 0.8),
            WellClearanceMm = chance.Between(0.2, 0.8),
        };

    private static BladeParameters Blade(Chance chance, double closed, double height) =>
        new()
        {
            Family = (BladeFamily)chance.Below(Enum.GetValues<BladeFamily>().Length),
            LengthMm = chance.Given(closed * chance.Between(0.66, 0.74)),
            RicassoMm = height * chance.Between(1.05, 1.4),
            ChoilRadiusMm = height * chance.Perhaps(0.08, 0.2),
            NickLengthMm = closed * chance.Between(0.09, 0.14),
            NickWidthMm = Math.Max(0.6, height * chance.Between(0.2, 0.32)),
        };

    /// <summary>Draws numbers, so that the order of drawing alone decides.</summary>
    private sealed class Chance(Random random)
    {
#pragma warning disable CA5394
        public double Between(double low, double high) => low + ((high - low) * random.NextDouble());

        public int Below(int count) => random.Next(count);
#pragma warning restore CA5394

        public bool OneIn(int count) => Below(count) == 0;

        /// <summary>Nothing as often as something.</summary>
        public double Perhaps(double low, double high) => OneIn(2) ? 0 : Between(low, high);

        /// <summary>Left out as often as given.</summary>
        public double? Given(double value) => OneIn(2) ? null : value;
    }
}
