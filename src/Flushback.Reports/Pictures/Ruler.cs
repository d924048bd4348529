using System.Xml.Linq;
using Flushback.Geometry;

namespace Flushback.Reports.Pictures;

/// <summary>A round length at the foot of a picture, so that its scale can be seen.</summary>
internal static class Ruler
{
    private const double LeastLength = 90;

    public static IEnumerable<XElement> Of(Pane pane)
    {
        double lengthMm = new double[] { 1, 2, 5, 10, 20, 50, 100, 200, 500 }.FirstOrDefault(
            length => length * pane.Scale >= LeastLength,
            1000
        );
        Point left = new(16, pane.Height - 18);
        Point right = left + new Vector(lengthMm * pane.Scale, 0);
        yield return Svg.Line(Ink.Axis, left, right);
        yield return Svg.Line(Ink.Axis, left - new Vector(0, 6), left + new Vector(0, 6));
        yield return Svg.Line(Ink.Axis, right - new Vector(0, 6), right + new Vector(0, 6));
        yield return Svg.Words(Ink.QuietLabel, left + new Vector(0, -12), 17, $"{Svg.Number(lengthMm)} mm");
    }
}
