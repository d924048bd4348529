using System.Globalization;

namespace Flushback.Geometry.Tests.Shapes;

/// <summary>A shape as text that can be pasted into a test, to the last digit.</summary>
internal static class Drawn
{
    public static string Text((Region Region, double DistanceMm) offset) =>
        string.Create(CultureInfo.InvariantCulture, $"{offset.DistanceMm:R} mm of {Text(offset.Region)}");

    public static string Text(Region region) => string.Join(" + ", region.Outlines.Select(Text));

    public static string Text(Outline outline) =>
        "["
        + string.Join(
            ", ",
            outline.Vertices.Select(vertex =>
                string.Create(
                    CultureInfo.InvariantCulture,
                    $"new({vertex.Position.X:R}, {vertex.Position.Y:R}, {vertex.Bulge:R})"
                )
            )
        )
        + "]";
}
