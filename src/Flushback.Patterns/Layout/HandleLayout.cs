using Flushback.Geometry;
using Flushback.Patterns.Parameters;

namespace Flushback.Patterns.Layout;

/// <summary>The handle before its corners are rounded; knife frame.</summary>
internal sealed class HandleLayout
{
    // How far the closed blade's nail nick lies out of the handle.
    private const double NickOutMm = 0.35;

    public HandleLayout(PatternParameters p, SpringLayout spring, BladeLayout blade)
    {
        double middle = (blade.FrontX + blade.ButtX) / 2;
        double line = spring.HandleLine.At(middle).Y;
        double low = p.Handle.HeightMm is { } height ? line - height : UsualLow(p, middle, blade);

        // The chord of the lower line lies over its middle by the swell, and falls to the butt by the taper.
        double chord = low + p.Handle.SwellMm;
        Point front = new(blade.FrontX, chord + (p.Handle.TaperMm / 2));
        Point butt = new(blade.ButtX, chord - (p.Handle.TaperMm / 2));
        Line = spring.HandleLine;
        LowerLine = Through(butt, new Point(middle, low), front);
        FrontX = blade.FrontX;
        ButtX = blade.ButtX;
        Filled = p with { Handle = p.Handle with { HeightMm = line - low } };
    }

    /// <summary>Height of the lower line halfway along, so that the nail nick is left out when closed.</summary>
    private static double UsualLow(PatternParameters p, double middle, BladeLayout blade)
    {
        Vector nick = new Vector(p.Blade.NickPlaceMm!.Value, blade.NickLowY).Rotated(
            -Angle.FromDegrees(p.Readings.ClosedRestDeg)
        );

        // The lower line falls by the taper over the handle's length, and its swell is that of a parabola, nearly.
        double share = (nick.X - middle) / p.Handle.ClosedLengthMm;
        return nick.Y + NickOutMm - (share * p.Handle.TaperMm) - (4 * share * share * p.Handle.SwellMm);
    }

    /// <summary>The handle's back.</summary>
    public BackLine Line { get; }

    /// <summary>The lower line from the butt to the front.</summary>
    public Edge LowerLine { get; }

    /// <summary>Front end.</summary>
    public double FrontX { get; }

    /// <summary>Butt.</summary>
    public double ButtX { get; }

    /// <summary>The parameters with the handle's height filled in.</summary>
    public PatternParameters Filled { get; }

    /// <summary>Height of the handle at its front, corners sharp.</summary>
    public double FrontHeightMm => Line.At(FrontX).Y - LowerLine.End.Y;

    /// <summary>Height of the handle at its butt, corners sharp.</summary>
    public double ButtHeightMm => Line.At(ButtX).Y - LowerLine.Start.Y;

    /// <summary>The arc through three points in order: the angle at the middle one is half what is missing to a full turn.</summary>
    private static Edge Through(Point start, Point middle, Point end)
    {
        // Inscribed angle theorem: the chord's ends are seen from the arc under 180 degrees less half the sweep.
        Vector before = middle - start;
        Vector after = end - middle;
        return Edge.Arc(start, end, new Angle(2 * Math.Atan2(before.Cross(after), before.Dot(after))));
    }
}
