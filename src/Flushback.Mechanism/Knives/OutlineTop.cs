using Flushback.Geometry;
using Flushback.Geometry.Crossings;

namespace Flushback.Mechanism.Knives;

/// <summary>The uppermost point of an outline over a place, and the direction of the outline there.</summary>
internal readonly record struct OutlineTop(Point At, Vector Tangent)
{
    private const double TouchMm = 1e-9;

    /// <summary>The last point of an outline straight above a place; null when none lies there.</summary>
    /// <param name="outline">The outline.</param>
    /// <param name="from">The place, below what is looked for.</param>
    /// <param name="up">Unit direction counted as up.</param>
    public static OutlineTop? Above(Outline outline, Point from, Vector up)
    {
        Box bounds = outline.Bounds;
        double far = from.DistanceTo(bounds.Centre) + bounds.WidthMm + bounds.HeightMm;
        Edge ray = new(from, from + (up * far));
        OutlineTop? top = null;
        double highest = double.NegativeInfinity;
        foreach (Edge edge in outline.Edges)
        {
            Meetings meetings = Crossing.Between(ray, edge, TouchMm);
            for (int i = 0; i < meetings.Count; i++)
            {
                double height = (meetings[i].At - from).Dot(up);
                if (height > highest)
                {
                    (highest, top) = (
                        height,
                        new OutlineTop(meetings[i].At, edge.TangentAt(meetings[i].OnSecond.Middle))
                    );
                }
            }
        }

        return top;
    }
}
