namespace Flushback.Geometry.Tests.Shapes;

/// <summary>Points spread over a box without a pattern that shapes could hide in, and the same ones every time.</summary>
internal static class Scattered
{
    /// <summary>So many points of the R2 sequence (steps of one over the plastic number and its square).</summary>
    public static IEnumerable<Point> Over(Box box, int count)
    {
        const double plastic = 1.32471795724474602596;
        for (int i = 1; i <= count; i++)
        {
            double x = i / plastic % 1;
            double y = i / (plastic * plastic) % 1;
            yield return new Point(box.MinX + (x * box.WidthMm), box.MinY + (y * box.HeightMm));
        }
    }
}
