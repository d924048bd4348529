using System.Collections.Immutable;
using Flushback.Geometry.Distances;

namespace Flushback.Geometry;

/// <summary>A connected area: the inside of a border without the insides of its holes. Immutable.</summary>
/// <remarks>
/// The material lies on the left of all its edges: the border runs counter-clockwise, the holes clockwise, whichever way
/// they were given. It is not checked that the outlines are sound (see <c>OutlineCheck</c>), nor that the holes lie inside
/// the border and apart from one another.
/// </remarks>
public sealed class Region
{
    /// <summary>The inside of a border, less its holes.</summary>
    public Region(Outline border, ImmutableArray<Outline> holes = default)
    {
        ArgumentNullException.ThrowIfNull(border);
        Border = border.CounterClockwise();
        Holes = holes.IsDefaultOrEmpty ? [] : [.. holes.Select(hole => hole.CounterClockwise().Reversed())];
    }

    /// <summary>The outer outline, counter-clockwise.</summary>
    public Outline Border { get; }

    /// <summary>The holes, clockwise.</summary>
    public ImmutableArray<Outline> Holes { get; }

    /// <summary>The border and then the holes.</summary>
    public IEnumerable<Outline> Outlines => Holes.Prepend(Border);

    /// <summary>Area without the holes, in square millimetres.</summary>
    public double AreaMm2 => Border.AreaMm2 - Holes.Sum(hole => hole.AreaMm2);

    /// <summary>Length of the border and of all holes, in millimetres.</summary>
    public double PerimeterMm => Border.PerimeterMm + Holes.Sum(hole => hole.PerimeterMm);

    /// <summary>Distance of a point from the border or the nearest hole in millimetres: positive inside, negative outside.</summary>
    public double SignedDistanceMm(Point p)
    {
        double distance = Outlines.Min(outline => Distance.Between(p, outline).DistanceMm);
        bool isInside = Outlines.Count(outline => Containment.IsInside(p, outline.Edges.AsSpan())) == 1;
        return isInside ? distance : -distance;
    }

    /// <summary>The moved region.</summary>
    public Region Transformed(RigidMotion motion) =>
        new(Border.Transformed(motion), [.. Holes.Select(hole => hole.Transformed(motion))]);
}
