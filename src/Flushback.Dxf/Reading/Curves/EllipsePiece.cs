using Flushback.Geometry;

namespace Flushback.Dxf.Reading.Curves;

/// <summary>Part of an ellipse: centre + U cos a + V sin a, for a from <paramref name="from"/> over <paramref name="sweep"/>.</summary>
/// <param name="centre">The centre.</param>
/// <param name="u">A half diameter.</param>
/// <param name="v">The half diameter conjugate to it; at right angles only before the ellipse is sheared.</param>
/// <param name="from">Where it begins, in radians of the parameter a.</param>
/// <param name="sweep">How far it runs, in radians of the parameter a; negative runs backwards.</param>
internal sealed class EllipsePiece(Point centre, Vector u, Vector v, double from, double sweep) : SmoothPiece
{
    /// <summary>A quarter a piece: its ends then lie on either side of at most one vertex of the ellipse.</summary>
    private const double MostSweep = Math.PI / 2;

    /// <summary>The pieces of a whole arc of an ellipse, none longer than a quarter.</summary>
    public static IEnumerable<EllipsePiece> Of(Point centre, Vector u, Vector v, double from, double sweep)
    {
        int pieces = Math.Max(1, (int)Math.Ceiling((Math.Abs(sweep) / MostSweep) - 1e-9));
        for (int i = 0; i < pieces; i++)
        {
            yield return new EllipsePiece(centre, u, v, from + (sweep * i / pieces), sweep / pieces);
        }
    }

    /// <inheritdoc/>
    public override Point At(double t)
    {
        (double sin, double cos) = Math.SinCos(from + (sweep * t));
        return centre + (u * cos) + (v * sin);
    }

    /// <inheritdoc/>
    public override Vector VelocityAt(double t)
    {
        (double sin, double cos) = Math.SinCos(from + (sweep * t));
        return ((v * cos) - (u * sin)) * sweep;
    }
}
