using Flushback.Geometry;

namespace Flushback.Mechanism.Knives;

/// <summary>Settles at which blade angle a blade is drawn.</summary>
internal static class DrawnBlade
{
    // A tip may lie this far off the blade's axis and still point where the blade points.
    private const double MostTipDegrees = 40;

    /// <summary>The tip: the vertex farthest from the pivot, in the frame of the blade.</summary>
    public static Point TipOf(Outline blade) =>
        blade.Edges.Select(edge => edge.Start).MaxBy(p => (p - Point.Origin).LengthSquared);

    /// <summary>The angle given, if the tip bears it out; without one, the nearest of 0, 90 and 180 degrees.</summary>
    /// <param name="blade">The blade as drawn, in the knife frame.</param>
    /// <param name="given">What the maker says.</param>
    public static (Angle? Angle, KnifeProblem? Problem) AngleOf(Outline blade, Angle? given)
    {
        Point tip = TipOf(blade);
        double points = (-(tip - Point.Origin).Direction).Degrees;
        double folded = points < -90 ? points + 360 : points;
        double nearest = Math.Clamp(Math.Round(folded / 90), 0, 2) * 90;
        double angle = given?.Degrees ?? nearest;
        if (Math.Abs(folded - angle) <= MostTipDegrees)
        {
            return (Angle.FromDegrees(angle), null);
        }

        string sentence = given is null
            ? FormattableString.Invariant(
                $"The blade is drawn turned by {folded:0.#} degrees from open, which is neither open (0), half stop (90) nor closed (180); say at which blade angle it is drawn."
            )
            : FormattableString.Invariant(
                $"The blade is said to be drawn at {angle:0.#} degrees, but its tip points to {folded:0.#} degrees from open; correct the drawn blade angle."
            );
        return (null, new KnifeProblem("DRAWN_BLADE_ANGLE_UNCLEAR", KnifeSubject.DrawnBladeAngle, sentence));
    }
}
