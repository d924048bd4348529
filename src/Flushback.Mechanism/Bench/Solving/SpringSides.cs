using Flushback.Geometry;
using Flushback.Geometry.Polar;

namespace Flushback.Mechanism.Bench.Solving;

/// <summary>The spring's boundary about its centre pin, where it is drawn, sorted by what each piece can touch.</summary>
internal sealed class SpringSides
{
    // Only round the centre pin itself does a spring's underside lie more steeply below it than this, in radians.
    private const double Steep = -0.9;

    private readonly double _steepReachMm;

    public SpringSides(PolarOutline spring, Point centrePin)
    {
        List<RadialPiece> all = [];
        spring.Split(centrePin, Angle.Zero, double.PositiveInfinity, all);
        Pieces = [.. all];
        IEnumerable<RadialPiece> front = all.Where(IsInFront).OrderBy(piece => piece.InnerMm);
        FrontLower = [.. front.Where(piece => piece.IsOutward)];
        FrontUpper = [.. front.Where(piece => !piece.IsOutward)];
        TailLower = [.. all.Where(piece => !IsInFront(piece) && !piece.IsOutward)];
        FrontReachMm = FrontLower.Concat(FrontUpper).Select(piece => piece.OuterMm).DefaultIfEmpty(0).Max();
        ReachMm = all.Max(piece => piece.OuterMm);
        ClearMm = all.Min(piece => piece.InnerMm);
        LowestFrontAngle = FrontLower.Select(piece => piece.MinAngle).DefaultIfEmpty(0).Min();
        _steepReachMm = FrontLower.Select(SteepReach).DefaultIfEmpty(0).Max();
        HighestTailAngle = TailLower.Select(piece => Behind(piece.MaxAngle)).DefaultIfEmpty(0).Max();
    }

    /// <summary>All pieces in order of travel, each at its <see cref="RadialPiece.Index"/>.</summary>
    public RadialPiece[] Pieces { get; }

    /// <summary>Underside, nose and the like forward of the centre pin: what the tang can push up.</summary>
    public RadialPiece[] FrontLower { get; }

    /// <summary>End face, back and the like forward of the centre pin: what an overhanging shoulder can hold down.</summary>
    public RadialPiece[] FrontUpper { get; }

    /// <summary>Underside behind the centre pin: what a blade folded too far meets.</summary>
    public RadialPiece[] TailLower { get; }

    /// <summary>Farthest point forward, from the centre pin.</summary>
    public double FrontReachMm { get; }

    /// <summary>Farthest point of all, from the centre pin.</summary>
    public double ReachMm { get; }

    /// <summary>Within this radius of the centre pin everything is spring.</summary>
    public double ClearMm { get; }

    /// <summary>Smallest polar angle among <see cref="FrontLower"/>.</summary>
    public double LowestFrontAngle { get; }

    /// <summary>Largest polar angle among <see cref="TailLower"/>, in [0, 2 pi).</summary>
    public double HighestTailAngle { get; }

    /// <summary>A polar angle below which nothing beyond a radius belongs to <see cref="FrontLower"/>.</summary>
    public double FloorAt(double radiusMm) => radiusMm >= _steepReachMm ? Steep : LowestFrontAngle;

    /// <summary>A polar angle counted from 0 to 2 pi, so that it does not jump behind the pin.</summary>
    public static double Behind(double angle) => angle < 0 ? angle + Math.Tau : angle;

    /// <summary>Radius up to which a piece lies below <see cref="Steep"/>; its outer end where it stays there.</summary>
    private static double SteepReach(RadialPiece piece)
    {
        if (piece.MinAngle >= Steep)
        {
            return 0;
        }

        double inner = piece.InnerMm;
        double outer = piece.OuterMm;
        while (piece.Outer.Angle > Steep && outer - inner > 0.01)
        {
            double middle = (inner + outer) / 2;
            (inner, outer) = piece.AngleAt(middle) > Steep ? (inner, middle) : (middle, outer);
        }

        return outer;
    }

    private static bool IsInFront(RadialPiece piece) => Math.Abs(piece.Outer.Angle) <= Math.PI / 2;
}
