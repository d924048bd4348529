using NetTopologySuite.Geometries;
using NetTopologySuite.Operation.Overlay;
using NetTopologySuite.Operation.OverlayNG;

namespace Flushback.Geometry.Approximation;

/// <summary>How much of two outlines lies over one another.</summary>
public static class OutlineOverlap
{
    private const int FinerTries = 4;

    /// <summary>Area in square millimetres common to the insides of two outlines; zero when they only touch.</summary>
    /// <remarks>
    /// Flattened with the error centred, so the area is wrong by less than the sagitta times the length of the arcs along
    /// its border. Where chords of the asked sagitta would cross one another, as across a wall thinner than that, finer
    /// ones are taken.
    /// </remarks>
    /// <param name="a">An outline that <c>OutlineCheck</c> finds sound.</param>
    /// <param name="b">Another such outline.</param>
    /// <param name="sagittaMm">Greatest distance between an arc and its chords, in millimetres.</param>
    /// <exception cref="ArgumentException">An outline crosses itself.</exception>
    /// <exception cref="ArgumentOutOfRangeException">The sagitta is not a positive number.</exception>
    public static double AreaMm2(Outline a, Outline b, double sagittaMm)
    {
        Flattening.RequirePositive(sagittaMm);
        if (!a.Bounds.Touches(b.Bounds))
        {
            return 0;
        }

        Polygon first = SoundPolygon(a, sagittaMm, nameof(a));
        Polygon second = SoundPolygon(b, sagittaMm, nameof(b));
        return OverlayNGRobust.Overlay(first, second, SpatialFunction.Intersection).Area;
    }

    private static Polygon SoundPolygon(Outline outline, double sagittaMm, string name)
    {
        for (int tries = 0; tries < FinerTries; tries++)
        {
            Polygon polygon = Polygons.Of(outline, [], sagittaMm, FlatteningBias.Centred);
            if (Polygons.FlawOf(polygon) is null)
            {
                return polygon;
            }

            sagittaMm /= 10;
        }

        throw new ArgumentException("The outline crosses itself, so its area has no meaning.", name);
    }
}
