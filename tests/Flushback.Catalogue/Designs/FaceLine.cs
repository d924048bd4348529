using Flushback.Geometry;

namespace Flushback.Catalogue.Designs;

/// <summary>An endless straight face: a point on it and the direction of travel, metal on the left.</summary>
internal readonly record struct FaceLine(Point On, Vector Along)
{
    /// <summary>A face through a point, travelled in a direction.</summary>
    public static FaceLine Through(Point on, Angle direction) => new(on, Vector.FromDirection(direction));

    /// <summary>Where two faces cross.</summary>
    public Point Meets(FaceLine other)
    {
        double along = (other.On - On).Cross(other.Along) / Along.Cross(other.Along);
        return On + (Along * along);
    }

    /// <summary>The point of the face at a given x.</summary>
    public Point AtX(double x) => On + (Along * ((x - On.X) / Along.X));

    /// <summary>
    /// Centre of the round that joins this face to the arc of a radius about the pivot, on the side asked for; with
    /// radius 0 the corner itself.
    /// </summary>
    /// <param name="runRadiusMm">Radius of the arc about the pivot.</param>
    /// <param name="cornerRadiusMm">Radius of the round, inside both.</param>
    /// <param name="ahead">True for the crossing farther along the face, false for the nearer one.</param>
    public Point RoundCentre(double runRadiusMm, double cornerRadiusMm, bool ahead)
    {
        // Inside by the round's radius from both: a line moved to the left and a circle shrunk.
        Vector moved = On + (Along.Left * cornerRadiusMm) - Point.Origin;
        double along = moved.Dot(Along);
        double reach = runRadiusMm - cornerRadiusMm;
        double root = Math.Sqrt((along * along) - moved.LengthSquared + (reach * reach));
        return Point.Origin + moved + (Along * ((ahead ? root : -root) - along));
    }
}
