using System.Text;
using Flushback.Geometry;

namespace Flushback.Reports.Pictures;

/// <summary>A window of the knife frame laid on a picture: millimetres with y up become picture units with y down.</summary>
/// <param name="Window">What is seen, in millimetres of the knife frame.</param>
/// <param name="Width">Width of the picture in its own units.</param>
internal sealed record Pane(Box Window, double Width)
{
    /// <summary>Picture units in a millimetre.</summary>
    public double Scale => Width / Window.WidthMm;

    /// <summary>Height of the picture in its own units.</summary>
    public double Height => Window.HeightMm * Scale;

    /// <summary>The whole picture.</summary>
    public Box Sheet => new(0, 0, Width, Height);

    /// <summary>Where a point of the knife frame comes to lie.</summary>
    public Point At(Point point) => new((point.X - Window.MinX) * Scale, (Window.MaxY - point.Y) * Scale);

    /// <summary>Where a direction of the knife frame points on the picture, keeping its length as a number.</summary>
    public static Vector Along(Vector direction) => new(direction.X, -direction.Y);

    /// <summary>Path data of an outline: every line a line, every arc an arc, nothing flattened.</summary>
    /// <param name="outline">In the frame it is drawn in.</param>
    /// <param name="motion">From there to the knife frame.</param>
    public string PathOf(Outline outline, RigidMotion motion) => PathAround(outline.Edges.Select(motion.Apply));

    /// <summary>Path data of a closed chain of edges in the knife frame.</summary>
    public string PathAround(IEnumerable<Edge> chain)
    {
        var data = new StringBuilder();
        foreach (Edge edge in chain)
        {
            if (data.Length == 0)
            {
                Append(data, "M", At(edge.Start));
            }

            AppendEdge(data, edge);
        }

        return data.Append('Z').ToString();
    }

    /// <summary>Path data of a single edge in the knife frame.</summary>
    public string PathOf(Edge edge)
    {
        var data = new StringBuilder();
        Append(data, "M", At(edge.Start));
        AppendEdge(data, edge);
        return data.ToString();
    }

    private void AppendEdge(StringBuilder data, Edge edge)
    {
        if (edge.IsArc)
        {
            // Counter-clockwise stays counter-clockwise to the eye; with y down, SVG calls that sweep 0.
            string radius = Svg.Number(edge.RadiusMm * Scale);
            char large = Math.Abs(edge.Bulge) > 1 ? '1' : '0';
            char sweep = edge.Bulge > 0 ? '0' : '1';
            Append(data, $"A{radius} {radius} 0 {large} {sweep} ", At(edge.End));
        }
        else
        {
            Append(data, "L", At(edge.End));
        }
    }

    private static void Append(StringBuilder data, string command, Point to) =>
        data.Append(command).Append(Svg.Number(to.X)).Append(' ').Append(Svg.Number(to.Y));
}
