using Flushback.Geometry;

namespace Flushback.Reports.Print;

/// <summary>Where a drawing lies on a sheet: turned about a point, enlarged, and laid with that point on a place of the sheet.</summary>
/// <param name="Point">A point of the drawing, in millimetres of its frame.</param>
/// <param name="Place">Where on the sheet it comes to lie, in millimetres from the lower left corner.</param>
/// <param name="Scale">Millimetres of paper to a millimetre of the drawing: 1 for 1:1, 4 for 4:1.</param>
/// <param name="Turn">By how much the drawing is turned counter-clockwise.</param>
public readonly record struct PaperView(Point Point, Point Place, double Scale = 1, Angle Turn = default)
{
    /// <summary>Where a point of the drawing lies on the sheet.</summary>
    public Point Of(Point point) => Place + ((point - Point).Rotated(Turn) * Scale);

    /// <summary>An edge of the drawing on the sheet: its ends move, its bulge stays.</summary>
    public Edge Of(Edge edge) => new(Of(edge.Start), Of(edge.End), edge.Bulge);

    /// <summary>A circle of the drawing on the sheet.</summary>
    public Circle Of(Circle circle) => new(Of(circle.Centre), circle.RadiusMm * Scale);
}
